import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { Package } from 'datapackage';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Influxd } from '../../bench/influxd.js';
import { openOwnGroup } from '../../src/group/index.js';
import { LocalGroup } from '../../src/group/local.js';
import { closeEarlierSample } from '../../src/group/sample-earlier.js';
import { loadSampleSeason } from '../../src/group/sample-season.js';
import {
  beginNext,
  closeSeason,
  lateChanges,
  nextSeason,
  reportFiles,
  seasonReport,
} from '../../src/reports/index.js';
import { renderSeason, seasonDocument, seasonFrom } from '../../src/season/index.js';
import { openFolder, restoreFolder } from '../../src/store/index.js';
import { languages, say, words } from '../../src/words/index.js';

const scratch = mkdtempSync(join(tmpdir(), 'underice-reports-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
let folders = 0;
const folder = () => join(scratch, `group-${++folders}`);

/** A day after the sample season, so that its last downloads are in hand. */
const now = () => Date.parse('2026-09-01T12:00Z');
const CLOSED = '2024-2025';
const PRINTED = Date.parse('2026-10-01T00:00Z') / 86_400_000;

/** Everything that is printed of a season in both languages, with and without a map. */
async function printedOf(group: LocalGroup, season: string, day = PRINTED) {
  const { documents } = await seasonReport(group, season);
  return languages.map((language) => [
    reportFiles(documents, language, day, 'none'),
    reportFiles(documents, language, day, 'exact'),
  ]);
}

let group: LocalGroup;
const sample = folder();
beforeAll(async () => {
  group = await openOwnGroup(sample, { now });
  await loadSampleSeason(group, 'tests');
  await closeEarlierSample(group, 'tests');
}, 60_000);
afterAll(() => group.close());

const changed = async (of: LocalGroup, change: (document: Record<string, unknown>) => object) => {
  const document = { ...seasonDocument(await of.season()), ...change(seasonDocument(await of.season())) };
  await of.applySeason(renderSeason(seasonFrom(document, 'season')), 'season', 'tests');
};

describe('closing a season', () => {
  it('refuses one without eggs, without a tally, with boxes out, and the second time', async () => {
    const own = await openOwnGroup(folder(), { now });
    await expect(closeSeason(own, 'tests')).rejects.toMatchObject({
      remark: { code: 'close-no-eggs' },
      exit: 2,
    });
    await own.applySeason(
      `group: { name: Invented, zone: UTC }
stations: [{ id: s }]
sites: [{ id: bend, station: s }]
lots: [{ id: A, fertilised: 2024-11-04 10:00, eggs: 2000, table: atlantic-salmon }]
boxes:
  - { id: B1, site: bend, planted: 2024-11-04 17:00, fills: [{ lot: A, eggs: 1000 }] }
  - { id: B2, site: bend, planted: 2024-11-04 17:00, fills: [{ lot: A, eggs: 1000 }] }`,
      'season.yaml',
      'tests',
    );
    await expect(closeSeason(own, 'tests')).rejects.toMatchObject({ remark: { code: 'close-no-tally' } });
    const b1 = { box: 'B1', when: '2025-06-17', empty: 700, dead: 300, alive: 0 };
    await changed(own, () => ({ tallies: [b1] }));
    await expect(closeSeason(own, 'tests')).rejects.toMatchObject({
      remark: { code: 'close-boxes-out', with: { boxes: ['B2'] } },
    });
    await expect(nextSeason(own)).rejects.toMatchObject({ remark: { code: 'next-not-closed' } });
    await changed(own, () => ({ tallies: [b1, { box: 'B2', when: '2025-06-17', found: 'carried-away' }] }));
    expect(await closeSeason(own, 'tests')).toMatchObject({ season: CLOSED, method: 1, by: 'tests' });
    await expect(closeSeason(own, 'others')).rejects.toMatchObject({
      remark: { code: 'close-twice', with: { season: CLOSED, by: 'tests' } },
    });
    await expect(seasonReport(own, '1999-2000')).rejects.toMatchObject({ remark: { code: 'close-unknown' } });
    await own.close();
  });

  it('two people at once: one closes it', async () => {
    const own = await openOwnGroup(folder(), { now });
    await own.applySeason(
      `group: { name: Invented, zone: UTC }
stations: [{ id: s }]
sites: [{ id: bend, station: s }]
lots: [{ id: A, fertilised: 2024-11-04 10:00, eggs: 1000, table: atlantic-salmon }]
boxes: [{ id: B1, site: bend, planted: 2024-11-04 17:00, fills: [{ lot: A, eggs: 1000 }] }]
tallies: [{ box: B1, when: 2025-06-17, empty: 700, dead: 300, alive: 0 }]`,
      'season.yaml',
      'tests',
    );
    const both = await Promise.allSettled([closeSeason(own, 'one'), closeSeason(own, 'two')]);
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await own.closedSeasons()).toHaveLength(1);
    await own.close();
  });

  it('prints the same to the byte after a backup, an export and a move to the other store', async () => {
    const before = await printedOf(group, CLOSED);
    const backup = join(scratch, 'backup.duckdb');
    await group.backup(backup);
    await group.exportAll(join(scratch, 'export'));
    for (const from of [backup, join(scratch, 'export')]) {
      const restored = await openOwnGroup(await restoreFolder(from, folder()), { now });
      expect(await printedOf(restored, CLOSED)).toEqual(before);
      expect((await restored.verify()).findings).toEqual([]);
      await restored.close();
    }
    const influxd = await Influxd.start();
    try {
      const server = {
        url: influxd.url,
        database: 'moved',
        user: null,
        password: null,
        token: null,
        organisation: null,
        patience: 5000,
      };
      const moved = await openFolder(await restoreFolder(backup, folder()), { now });
      await moved.copyTo('influx', server);
      const there = new LocalGroup(moved, now);
      expect(await printedOf(there, CLOSED)).toEqual(before);
      await there.close();
    } finally {
      await influxd.end();
    }
  }, 60_000);

  it('prints what an older program kept to the byte as that program did', async () => {
    // What version 0.1.0 kept of the invented season, and the hash of what it printed of it.
    const kept = new URL('closed-0.1.0.json.gz', import.meta.url);
    const content = gunzipSync(readFileSync(kept)).toString('utf8');
    const own = await openOwnGroup(folder(), { now });
    await own.keepClosed({ season: CLOSED, version: 0, method: 1, content }, 'tests');
    // Its date aside: that program wrote the day of printing "1 octobre" in French.
    const pages = JSON.stringify(await printedOf(own, CLOSED)).replaceAll('1er octobre', '1 octobre');
    const hash = createHash('sha256').update(pages);
    expect(hash.digest('hex')).toBe('209a44cb12c37995885cdfb9e30ff20c9ff6ecf7b436af8a8a20355bb078688f');
    await own.close();
  });

  it('prints a folder an older program closed to the byte as that program did, upgraded and restored', async () => {
    // A whole data folder of an invented river (a download, a control sample, two counters, a box not found, a permit),
    // loaded and closed by the program of commit bee011a, and the hash of what that program printed of it.
    const first = new URL('first-closed/underice.duckdb.gz', import.meta.url);
    const dir = folder();
    mkdirSync(dir);
    writeFileSync(join(dir, 'underice.duckdb'), gunzipSync(readFileSync(first)));
    const hashOf = async (of: LocalGroup) =>
      createHash('sha256')
        .update(JSON.stringify(await printedOf(of, CLOSED, PRINTED + 1)))
        .digest('hex');
    const hash = '1dbf53b33b5db68759644b5064a7ca51d9d7632e0c3f938f34269f5b5e9a0503';
    const own = await openOwnGroup(dir, { now });
    expect(await hashOf(own)).toBe(hash);
    expect((await own.verify()).findings).toEqual([]);
    const backup = join(scratch, 'first-closed.duckdb');
    await own.backup(backup);
    await own.close();
    const restored = await openOwnGroup(await restoreFolder(backup, folder()), { now });
    expect(await hashOf(restored)).toBe(hash);
    await restored.close();
  }, 60_000);

  it('a late download says what it would have changed and leaves the closed season', async () => {
    const before = await printedOf(group, CLOSED);
    expect(await lateChanges(group, CLOSED)).toEqual({ season: CLOSED, changes: [] });
    // A logger nobody had read: two degrees warmer all spring at the pool, where the water had been filled.
    const lines = ['time,water_c'];
    for (let day = Date.parse('2025-02-01T00:00Z'); day < Date.parse('2025-06-10T00:00Z'); day += 3_600_000)
      lines.push(`${new Date(day).toISOString().slice(0, 16)}Z,${(day / 86_400_000) % 1 < 0.5 ? 6.5 : 7.5}`);
    const late = join(scratch, 'late.csv');
    writeFileSync(late, `${lines.join('\n')}\n`);
    await changed(group, (document) => ({
      deployments: [
        ...(Array.isArray(document.deployments) ? document.deployments : []),
        { logger: 'T-5', station: 'upper', lay: 'stream', from: '2024-11-01 12:00', to: '2025-06-17 12:00' },
      ],
    }));
    const [outcome] = await group.load({
      files: [{ path: late, station: 'upper' }],
      asked: {},
      createStations: false,
      dryRun: false,
      who: 'tests',
      progress: null,
    });
    expect(outcome).toMatchObject({ refused: null });
    const { changes } = await lateChanges(group, CLOSED);
    expect(changes.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['late-units', 'late-freezing', 'late-stage']),
    );
    const stage = changes.find(({ code }) => code === 'late-stage');
    expect(stage && say('fr', stage)).toMatch(
      /\u00a0: (?:œuf œillé|éclosion|résorption du sac vitellin|émergence), le \d.*; dans la saison close, le [^.]+\.$/,
    );
    const boxes = (code: string) =>
      new Set(changes.filter((one) => one.code === code).map((one) => one.with.box));
    expect(boxes('late-freezing')).toEqual(new Set(['U1', 'U2']));
    // Others had days filled from the pool: a few degree-days, no stage that is worth a line of its own.
    for (const change of changes) {
      if (change.code !== 'late-units' || ['U1', 'U2'].includes(change.with.box)) continue;
      expect(Math.abs((change.with.now ?? 0) - (change.with.was ?? 0))).toBeLessThan(10);
    }
    expect(await printedOf(group, CLOSED)).toEqual(before);
  }, 60_000);

  it('the next season carries places and instruments over, and says what is due', async () => {
    const restored = await openOwnGroup(await restoreFolder(join(scratch, 'export'), folder()), { now });
    // Back to the document that was closed, as it stands right after closing.
    const versions = await restored.seasonVersions();
    for (const { version } of versions) {
      const text = await restored.seasonAt(version);
      if (!text.includes('INV-2024-07')) continue;
      await restored.applySeason(text, 'season', 'tests');
      break;
    }
    const next = await nextSeason(restored);
    expect(next).toMatchObject({ after: CLOSED, carried: { sites: 4, stations: 7, loggers: 3 } });
    expect(words('en', 'next-left', next.left)).not.toContain('blocked');
    expect(words('fr', 'next-left', { ...next.left, blocked: 2 })).toContain(
      'et 2 inscriptions de jours exclus.',
    );
    expect(next.due.map(({ code }) => code)).toEqual(
      expect.arrayContaining([
        'next-report-due',
        'next-permit-ends',
        'next-lost',
        'next-calibration',
        'next-battery',
      ]),
    );
    await beginNext(restored, 'tests');
    const season = await restored.season();
    expect([season.boxes, season.lots, season.visits, season.tallies, season.broodstock]).toEqual([
      [],
      [],
      [],
      [],
      [],
    ]);
    expect(season.stations).toHaveLength(7);
    expect(season.deployments.length).toBeGreaterThan(0);
    await expect(beginNext(restored, 'tests')).rejects.toMatchObject({ remark: { code: 'next-not-closed' } });
    expect((await seasonReport(restored, CLOSED)).closed).not.toBeNull();
    await restored.close();
  });
});

describe('the open data', () => {
  // Frictionless' own library for JavaScript: its profiles (JSON Schema) and its table reader.
  it.each(languages)(
    'is a Tabular Data Package by the public validator, every cell of its type (%s)',
    async (language) => {
      const { documents } = await seasonReport(group, CLOSED);
      const files = reportFiles(documents, language, PRINTED, 'none');
      const descriptor = JSON.parse(files['datapackage.json']);
      const described = await Package.load(descriptor);
      expect(described.errors).toEqual([]);
      expect(described.valid).toBe(true);
      for (const resource of described.resources) {
        const { data } = Papa.parse<string[]>(files[`${resource.name}.csv`], { skipEmptyLines: true });
        const [header, ...rows] = data;
        const { fields } = resource.descriptor.schema;
        expect(header).toEqual(fields.map(({ name }) => name));
        for (const field of fields) {
          expect(field.unit).toMatch(/\S/);
          expect(field.description).toMatch(/\p{L}{3}/u);
        }
        for (const row of rows) expect(resource.schema.castRow(row)).toHaveLength(fields.length);
      }
      expect(described.resources.map(({ name }) => name)).toContain('winters');
      expect(JSON.stringify(files)).not.toMatch(/-66\.|47\.1/);
    },
  );
});

describe('what a name may hold', () => {
  const name = `<script>alert(1)</script>${'X'.repeat(170)}`;

  it('script is text, 200 characters are kept, and formulas of a spreadsheet are not run', async () => {
    const own = await openOwnGroup(folder(), { now });
    await own.applySeason(
      renderSeason(
        seasonFrom(
          {
            group: { name, zone: 'UTC' },
            stations: [{ id: 's' }],
            sites: [{ id: 'bend', station: 's', name, latitude: 45, longitude: -66 }],
            lots: [{ id: 'A', fertilised: '2024-11-04 10:00', eggs: 1000, table: 'atlantic-salmon' }],
            boxes: [
              { id: 'B1', site: 'bend', planted: '2024-11-04 17:00', fills: [{ lot: 'A', eggs: 1000 }] },
            ],
            tallies: [{ box: 'B1', when: '2025-06-17', empty: 700, dead: 300, alive: 0 }],
            permits: [
              {
                number: '=HYPERLINK("http://invented")',
                authority: name,
                from: '2024-10-01',
                to: '2025-07-01',
              },
            ],
          },
          'season',
        ),
      ),
      'season',
      'tests',
    );
    const { documents } = await seasonReport(own, null);
    for (const language of languages) {
      const files = reportFiles(documents, language, PRINTED, 'exact');
      for (const [file, text] of Object.entries(files)) {
        if (file.endsWith('.html')) {
          expect(text).not.toContain('<script');
          expect(text).toContain('X'.repeat(170));
        }
      }
      expect(files['permits.csv']).toContain(`"'=HYPERLINK`);
    }
    await own.close();
  });

  it('1,000 boxes are one report', async () => {
    const own = await openOwnGroup(folder(), { now });
    const boxes = Array.from({ length: 1000 }, (_, i) => ({
      id: `B${i}`,
      site: `site-${i % 50}`,
      planted: '2024-11-04 17:00',
      fills: [{ lot: 'A', eggs: 1000 }],
    }));
    await own.applySeason(
      renderSeason(
        seasonFrom(
          {
            group: { name: 'Invented', zone: 'UTC' },
            stations: [{ id: 's' }],
            sites: Array.from({ length: 50 }, (_, i) => ({ id: `site-${i}`, station: 's' })),
            lots: [{ id: 'A', fertilised: '2024-11-04 10:00', eggs: 1_000_000, table: 'atlantic-salmon' }],
            boxes,
            tallies: boxes.map(({ id }, i) => ({
              box: id,
              when: '2025-06-17',
              empty: 600 + ((i * 37) % 300),
              dead: 100,
              alive: 0,
            })),
          },
          'season',
        ),
      ),
      'season',
      'tests',
    );
    const { documents, figures } = await seasonReport(own, null);
    const all = figures.survival.groups.find(({ by }) => by === 'all');
    expect(all?.found).toMatchObject({ boxes: 1000, method: 'beta-binomial', of: 1_000_000 });
    const { 'report.html': report, 'boxes.csv': csv } = reportFiles(documents, 'fr', PRINTED, 'none');
    expect(csv.trim().split('\r\n')).toHaveLength(1001);
    expect(report).toContain('>B999</td>');
    await own.close();
  }, 60_000);
});
