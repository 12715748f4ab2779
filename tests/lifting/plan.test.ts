import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { samplePath } from '../../sample-logs/plan.js';
import { preparedDay } from '../../src/field/index.js';
import { type Group, openGroup, openOwnGroup } from '../../src/group/index.js';
import {
  approvePlan,
  dayOf,
  enterPutBack,
  enterTally,
  liftingAnswer,
  liftingState,
  outcomes,
  outcomesAnswer,
  stateLifting,
  talliesAnswer,
} from '../../src/lifting/index.js';
import { renderSeason, seasonDocument, seasonFrom } from '../../src/season/index.js';
import { isRefusal, sayRefusal } from '../../src/words/refusals.js';
import { copySampleSeason } from '../http/sample-copy.js';

const folder = mkdtempSync(join(tmpdir(), 'underice-lifting-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const JUNE = dayOf('2026-06-01');

let group: Group;
beforeAll(async () => {
  await copySampleSeason(folder);
  group = await openOwnGroup(folder, { standingAt: JUNE });
}, 60_000);
afterAll(() => group.close());

/** A box in a river of which nothing was read but one day. */
const NO_WATER = `group: { name: G, zone: America/Moncton }
stations: [{ id: pool, name: Pool, kind: stream }]
sites: [{ id: pool, name: Pool, station: pool }]
lots: [{ id: A, fertilised: 2025-11-01 10:00, eggs: 4000, table: atlantic-salmon }]
boxes: [{ id: B1, site: pool, planted: 2025-11-01 12:00, fills: [{ lot: A, eggs: 4000 }] }]
`;
const ask = async (asOf: number | null = null) => liftingAnswer(await liftingState(group, asOf), 'en');
async function changed(edit: (document: Record<string, unknown>) => Record<string, unknown>) {
  const document = edit(seasonDocument(await group.season()));
  await group.applySeason(renderSeason(seasonFrom(document, 'x')), 'x', 'tests');
}

describe('the plan of the invented season', () => {
  it('answers in the shape other programs rely on', async () => {
    const answer = await ask(JUNE - 7);
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining([
        'asOf',
        'cautions',
        'rule',
        'levels',
        'days',
        'boxes',
        'recommended',
        'why',
        'state',
      ]),
    );
    expect(answer).toMatchObject({
      asOf: '2026-05-25',
      rule: 'before-emergence',
      levels: { stillInBox: 0.02, emerged: 0.05 },
      state: 'draft',
    });
    expect(answer.cautions).toHaveLength(3);
    expect(answer.boxes.map(({ box }) => box)).toEqual(['U1', 'U2', 'F1', 'F2', 'B1', 'A1']);
    for (const { days } of answer.boxes) {
      expect(days.map(({ date }) => date)).toEqual(answer.days.map(({ date }) => date));
      for (const day of days) {
        for (const share of [day.stillInBox, day.emerged, day.chance]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
        }
        expect(day.blocked).toBeNull();
      }
      // Once left a box, or the gravel, nothing comes back.
      expect(days.every((day, i) => i === 0 || day.stillInBox <= (days[i - 1]?.stillInBox ?? 1))).toBe(true);
      expect(days.every((day, i) => i === 0 || day.emerged >= (days[i - 1]?.emerged ?? 0))).toBe(true);
    }
    expect(answer.recommended.every((date) => date > '2026-05-25')).toBe(true);
    expect(answer.why).toMatch(/^Lift on .* A day earlier: .* A day later: .* Look at the plan again by /);
    expect(answer.standing).toEqual(['This plan is a draft: nobody has approved it.']);
  });

  it('says first that no day is likely to do where none is, then the least bad, and what would help', async () => {
    for (const day of ['2026-02-15', '2026-06-01']) {
      const answer = await ask(dayOf(day));
      expect(answer.chance).toBeLessThan(0.5);
      expect(answer.why).toMatch(
        /^No day is likely to keep both levels .* Least bad: .* Expected then: .* Look at the plan again by /,
      );
      expect(answer.why.includes('weather still to come')).toBe(day < '2026-05');
      expect(answer.wouldHelp.join(' ')).toMatch(/One more download \(.*narrows the next window/);
      // Stations by the names people know them by, never by their short ones.
      expect(answer.wouldHelp.join(' ')).not.toMatch(/\((?:upper|ford|braid)\b/);
    }
  });

  it('says the same in French, and without a stray code', async () => {
    const answer = liftingAnswer(await liftingState(group, null), 'fr');
    expect(answer.why).toMatch(/^Aucun jour ne promet .* Les moins mauvais\s: /);
    expect(answer.why).toMatch(/alevins vésiculés/);
    expect(answer.cautions[1]).toMatch(/glace/);
  });

  it('keeps away from blocked days of a site and of all', async () => {
    const before = await ask();
    const [first] = before.recommended;
    await changed((document) => ({
      ...document,
      blocked: [{ from: first, to: first, reason: 'high water' }],
    }));
    const after = await ask();
    expect(after.recommended).not.toContain(first);
    expect(after.days.find(({ date }) => date === first)?.blocked).toBe('high water');
    await changed((document) => ({
      ...document,
      blocked: [{ from: '2026-05-01', to: '2026-12-31', reason: 'no permit' }],
    }));
    const none = await ask();
    expect(none.recommended).toEqual([]);
    expect(none.why).toMatch(/^There is no day to lift 6 boxes: every day that would do is blocked\./);
    await changed(({ blocked: _, ...document }) => document);
    expect((await ask()).recommended).toEqual(before.recommended);
  });

  it('says that levels cannot both be met, and shows the least bad with its price', async () => {
    await stateLifting(group, { stillInBox: 0, emerged: 0 }, 'tests');
    const answer = await ask();
    expect(answer.chance).toBe(0);
    expect(answer.recommended.length).toBeGreaterThan(0);
    expect(answer.why).toMatch(/No day is likely to keep both levels .*Expected then: about \d+ alevins/);
    expect(answer.wouldHelp.join(' ')).toMatch(/Wider levels/);
    await stateLifting(group, { stillInBox: null, emerged: null }, 'tests');
  });

  it('plans on the stage a table has where it names no emergence, and says so', async () => {
    const own = (id: string, ...more: object[]) => ({
      id,
      species: 'Salmo salar',
      name: id,
      stages: [
        {
          stage: 'hatch',
          needs: {
            law: {
              form: 'days-at',
              rows: [
                { celsius: 0.5, days: 190 },
                { celsius: 10, days: 48 },
              ],
            },
          },
          validity: { min: 0.5, max: 10 },
        },
        ...more,
      ],
    });
    const buttonUp = {
      stage: 'button-up',
      needs: { multipleOf: 'hatch', factor: 1.6 },
      validity: { min: 0.5, max: 10, judged: 'at-stage' },
    };
    const before = seasonDocument(await group.season());
    const planned = async (table: object) => {
      const lots = Array.isArray(before.lots) ? before.lots : [];
      await changed(() => ({
        ...before,
        tables: [table],
        lots: lots.map((lot) => ({ ...lot, table: 'ours' })),
      }));
      return ask();
    };
    const two = await planned(own('ours', buttonUp));
    expect(two.recommended.length).toBeGreaterThan(0);
    expect(two.why).toMatch(/names no emergence: button-up stands in for it/);
    const one = await planned(own('ours'));
    expect(one.recommended.length).toBeGreaterThan(0);
    expect(one.why).toMatch(/names no stage after hatch: only leaving the box is planned on/);
    expect(one.days.every(({ emerged }) => emerged === 0)).toBe(true);
    await changed(() => before);
  });

  it('goes along on a phone as sheets that begin with the stop rule', async () => {
    const [{ sheets, boxes }, { plan }] = [await preparedDay(group), await ask()];
    expect(sheets.map(({ date, site }) => [date, site])).toEqual(
      plan.flatMap(({ date, sites }) => sites.map((site) => [date, site])),
    );
    for (const { stop, draft, boxes: mine } of sheets) {
      expect(draft).toBe(true);
      expect(mine.some((box) => stop.en.startsWith(`Open box ${box}`))).toBe(true);
      expect(stop.en).toMatch(/If more than \d+ live alevins are in it, close it(,| and) put it back/);
      expect(stop.fr).toMatch(/alevins vésiculés vivants/);
    }
    expect(boxes.find(({ id }) => id === 'F2')).toMatchObject({
      eggs: 1000,
      parts: ['left half', 'right half'],
    });
  });

  it('holds the crew to its boxes a day', async () => {
    await stateLifting(group, { boxesADay: 2 }, 'tests');
    const { plan } = await ask();
    expect(plan.every(({ boxes }) => boxes.length <= 2)).toBe(true);
    await stateLifting(group, { boxesADay: null }, 'tests');
  });

  it('says how good it would be were the sites of a trip lifted apart', async () => {
    const apart = await ask();
    await stateLifting(group, { trips: [['upper-pool', 'alder', 'braid', 'ford']] }, 'tests');
    const together = await liftingState(group, null);
    expect(together.plan.recommended).toHaveLength(1);
    expect(together.plan.apart).toBeCloseTo(apart.chance, 3);
    await stateLifting(group, { trips: null }, 'tests');
    expect((await liftingState(group, null)).plan.apart).toBeNull();
  });

  it('keeps to the days a permit covers, of a site and of all', async () => {
    const [first] = (await ask()).recommended;
    await changed((document) => ({
      ...document,
      permits: [{ number: 'P-7', from: '2026-06-03', to: '2026-06-30' }],
    }));
    const answer = await ask();
    expect(first < '2026-06-03').toBe(true);
    expect(answer.recommended.every((date) => date >= '2026-06-03' && date <= '2026-06-30')).toBe(true);
    expect(answer.days.find(({ date }) => date === '2026-06-02')?.blocked).toBe('outside the permit (P-7)');
    const french = liftingAnswer(await liftingState(group, null), 'fr');
    expect(french.days.find(({ date }) => date === '2026-06-02')?.blocked).toBe('hors du permis (P-7)');
    await changed((document) => ({
      ...document,
      permits: [{ number: 'P-8', from: '2025-10-01', to: '2025-12-31' }],
    }));
    const none = await ask();
    expect(none.recommended).toEqual([]);
    expect(none.why).toMatch(/every day that would do is blocked/);
    await changed(({ permits: _, ...document }) => document);
    expect((await ask()).recommended[0]).toBe(first);
  });

  it('blocks today and tomorrow where the gauge stands above the stated limit, and no longer when it has fallen', async () => {
    // The national service's file of the bridge, 21 May to 19 June: 23:00 is the last level of a day.
    const levels = new Map(
      readFileSync(samplePath('downloads/bridge-level.csv'), 'utf8')
        .split('\r\n')
        .flatMap((row) => {
          const [, at = '', level] = row.split(',');
          return at.slice(11, 16) === '23:00' ? [[at.slice(0, 10), Number(level)] as const] : [];
        }),
    );
    const most = 0.95;
    expect(levels.get('2026-05-29')).toBeGreaterThan(most);
    expect(levels.get('2026-06-08')).toBeLessThan(most);
    await stateLifting(group, { gauge: { station: 'bridge', quantity: 'level', most } }, 'tests');
    const [high, low] = [await ask(dayOf('2026-05-29')), await ask(dayOf('2026-06-08'))];
    const blocked = (of: typeof high) =>
      of.days.flatMap(({ date, blocked: why }) => (why === null ? [] : [[date, why]]));
    expect(blocked(high)).toEqual([
      ['2026-05-29', expect.stringMatching(/^level at Highway bridge is 0\.98 m, above 0\.95$/)],
      ['2026-05-30', expect.stringMatching(/above 0\.95$/)],
    ]);
    expect(high.recommended.every((date) => date > '2026-05-30')).toBe(true);
    expect(high.cautions[3]).toMatch(
      /Do not go into the water above 0\.95 m at Highway bridge \(last known 0\.98\)/,
    );
    expect(blocked(low)).toEqual([]);
    // No reading for weeks: the limit is said, and that nothing recent is known.
    expect((await ask(dayOf('2026-06-25'))).cautions[3]).toMatch(/no recent reading is known/);
    await stateLifting(group, { gauge: null }, 'tests');
  });
});

describe('a plan that a person approves', () => {
  it('keeps who, when and what; says when the forecast has moved since, and on what', async () => {
    const draft = await ask();
    await approvePlan(group, 'Ada', Date.UTC(2026, 5, 1, 18), draft.recommended);
    const approved = await ask();
    expect(approved.state).toBe('approved');
    expect(approved.approved).toMatchObject({ by: 'Ada', days: draft.recommended });
    expect(approved.standing[0]).toMatch(/^Approved by Ada on 1 Jun 2026, /);
    expect(approved.standing[1]).toBe('The forecast still says the same days.');
    expect((await ask(JUNE - 5)).state).toBe('draft');
    const text = await group.seasonText();
    expect(text).toContain('by: Ada');
  });

  it('is refused where the plan is another by now', async () => {
    const refusal = await approvePlan(group, 'Ada', 0, ['2026-01-01']).catch((error: unknown) => error);
    expect(isRefusal(refusal) && sayRefusal('en', refusal)).toMatch(/The plan has changed/);
  });
});

describe('a box checked and put back', () => {
  it('moves its windows and the plan at once, and is no lifting', async () => {
    const hatch = async () => {
      const { boxes } = await group.forecast({ box: null, asOf: null });
      const window = boxes[0]?.windows.find(({ stage }) => stage === 'hatch');
      return window?.median.p50 ?? 0;
    };
    const [before, days] = [await hatch(), (await ask()).recommended];
    const entered = { box: 'U1', when: '2026-06-01', alive: 900, empty: 20, entry: 'check-0001' };
    expect(await enterPutBack(group, entered, 'Ada')).toEqual({ fresh: true });
    expect(await enterPutBack(group, entered, 'Ada')).toEqual({ fresh: false });
    expect(await hatch()).toBeGreaterThan(before);
    const after = await ask();
    expect(after.recommended.at(-1)! > days.at(-1)!).toBe(true);
    expect(after.boxes.find(({ box }) => box === 'U1')?.planned).not.toBeNull();
    // It was approved before: now it says what moved, and since when.
    expect(after.state).toBe('approved');
    expect(after.standing.join(' ')).toMatch(/Since it was approved the plan has moved .* later/);
    const season = await group.season();
    expect(season.checkedAndPutBack).toHaveLength(1);
    expect(season.boxes.find(({ id }) => id === 'U1')?.lifted).toBeNull();
    expect((await ask(JUNE - 1)).recommended).not.toEqual(after.recommended);
  });
});

describe('tallies', () => {
  it('keeps two people’s at once, both, and the same entry once', async () => {
    const tally = (counter: string, empty: number) => ({
      box: 'A1',
      when: '2026-06-01',
      counter,
      empty,
      dead: 100,
      alive: 0,
      entry: `tally-${counter}`,
    });
    const kept = await Promise.all([
      enterTally(group, tally('Ada', 700), 'Ada'),
      enterTally(group, tally('Ben', 690), 'Ben'),
      enterTally(group, tally('Ada', 700), 'Ada'),
    ]);
    expect(kept.filter(({ fresh }) => fresh)).toHaveLength(2);
    const { tallies } = talliesAnswer(await group.season(), 'en');
    expect(tallies.map(({ counter, counted }) => [counter, counted]).sort()).toEqual([
      ['Ada', 800],
      ['Ben', 790],
    ]);
    expect(tallies[0]?.remarks.join(' ')).toMatch(/not accounted for.*differ by 10/);
  });

  it('takes the box out of the plan, and a download that comes after the lifting leaves it out', async () => {
    const season = await group.season();
    expect(season.boxes.find(({ id }) => id === 'A1')?.lifted).toMatch(/^2026-06-01/);
    const answer = await ask();
    expect(answer.boxes.find(({ box }) => box === 'A1')).toMatchObject({ planned: null, days: [] });
    expect(answer.plan.flatMap(({ boxes }) => boxes)).not.toContain('A1');
    // The ford's logger is read after F1 was lifted: F1 stays out and counted, F2 beside it goes on.
    await enterTally(group, { box: 'F1', when: '2026-06-01', empty: 950, dead: 50, alive: 0 }, 'Ada');
    const before = (await group.season()).tallies;
    const rows = Array.from({ length: 24 * 160 }, (_, hour) => {
      const at = new Date(Date.UTC(2025, 11, 20, hour)).toISOString().slice(0, 16).replace('T', ' ');
      return `${at},${Math.max(0.1, (hour - 2600) / 160).toFixed(2)}`;
    });
    const file = join(folder, 'ford-late.csv');
    writeFileSync(file, ['Date and time (UTC-04:00),Temperature (°C)', ...rows].join('\n'));
    const [loaded] = await group.load({
      files: [{ path: file, station: 'ford' }],
      asked: {},
      createStations: false,
      dryRun: false,
      who: 'tests',
      progress: null,
    });
    expect(loaded).toMatchObject({ refused: null, alreadyLoaded: false });
    const late = await ask();
    expect(late.boxes.find(({ box }) => box === 'F1')).toMatchObject({ planned: null, days: [] });
    expect(late.boxes.find(({ box }) => box === 'F2')?.planned).not.toBeNull();
    expect((await group.season()).tallies).toEqual(before);
    expect(late.boxes.find(({ box }) => box === 'A1')).toMatchObject({ planned: null, days: [] });
  });

  it('knows boxes that are gone, and refuses what cannot be in a sentence', async () => {
    await enterTally(group, { box: 'B1', when: '2026-06-01', found: 'carried-away' }, 'Ada');
    const season = await group.season();
    expect(season.boxes.find(({ id }) => id === 'B1')?.lifted).toBeNull();
    expect((await ask()).boxes.find(({ box }) => box === 'B1')?.planned).toBeNull();
    const said = async (entered: Record<string, unknown>) => {
      const error = await enterTally(group, { when: '2026-06-01', ...entered }, 'Ada').catch(
        (e: unknown) => e,
      );
      return isRefusal(error) ? sayRefusal('en', error) : String(error);
    };
    expect(await said({ box: 'U2', empty: 99_999 })).toMatch(/too many/);
    expect(await said({ box: 'U2', empty: -4 })).toMatch(/outside what can be/);
    expect(await said({ box: 'U2', empty: 'lots' })).toMatch(/not a number/);
    expect(await said({ box: 'nowhere', empty: 1 })).toMatch(/There is no box/);
    expect(await said({ box: 'U2', empty: 1, when: '2025-01-01' })).toMatch(/before it was planted/);
    expect((await group.season()).tallies).toHaveLength(4);
  });

  it('stand at season’s end beside the windows as they had been', async () => {
    const found = await outcomes(group);
    const check = found.find(({ what }) => what === 'still');
    expect(check).toMatchObject({ box: 'U1', day: JUNE });
    expect(check?.said.map(({ asOf }) => JUNE - asOf)).toEqual([60, 30, 14, 7]);
    for (const { share, from, to } of check?.said ?? []) {
      expect(from).toBeLessThanOrEqual(share + 1e-9);
      expect(to).toBeGreaterThanOrEqual(from);
    }
    const { outcomes: told } = outcomesAnswer(found, 'fr');
    expect(told.map(({ found: sentence }) => sentence).join(' ')).toMatch(/vérifié et remis en place/);
    expect((await outcomes(group, dayOf('2025-12-01'))).length).toBeLessThan(found.length);
  });

  it('bound hatch where living eggs are told from alevins, in the forecast and in the record of how right it was', async () => {
    const hatch = async () => {
      const { boxes } = await group.forecast({ box: 'U2', asOf: null });
      return boxes[0]!.lots[0]!.windows.find(({ stage }) => stage === 'hatch')!.median.p50!;
    };
    const before = await hatch();
    const late = { box: 'U2', when: '2026-06-01', alive: 900, empty: 0, aliveEggs: 850 };
    await enterPutBack(group, late, 'Ada');
    expect(await hatch()).toBeGreaterThan(before);
    const found = (await outcomes(group)).find(({ what }) => what === 'hatched');
    expect(found).toMatchObject({ box: 'U2', stage: 'hatch', share: 50 / 900, most: 50 / 900 });
    expect(found?.said.every(({ verdict }) => verdict === 'outcome-early')).toBe(false);
    const refused = enterPutBack(group, { ...late, aliveEggs: 901 }, 'Ada');
    await expect(refused).rejects.toMatchObject({ name: 'SeasonRefused' });
    const tally = enterTally(group, { box: 'U2', when: '2026-06-02', empty: 5000 }, 'Ada');
    const said = await Promise.all(
      [refused, tally].map((one) =>
        one.catch((error: unknown) => isRefusal(error) && sayRefusal('en', error)),
      ),
    );
    expect(said[0]).toMatch(/^The check of box U2 was not taken, and nothing was changed:\n {2}aliveEggs: /);
    expect(said[1]).toMatch(/^The tally of box U2 was not taken, and nothing was changed:\n/);
  });

  it('are one group’s own: nothing of them is in another folder', async () => {
    const other = mkdtempSync(join(tmpdir(), 'underice-lifting-'));
    const empty = await openGroup(other);
    expect(talliesAnswer(await empty.season(), 'en').tallies).toEqual([]);
    expect(liftingAnswer(await liftingState(empty, null), 'en').why).toMatch(/no boxes yet/);
    await empty.applySeason(NO_WATER, 'x', 'tests');
    const ask = async (language: 'en' | 'fr') =>
      liftingAnswer(await liftingState(empty, dayOf('2026-02-01')), language);
    const nothing = await ask('en');
    expect(nothing).toMatchObject({ recommended: [], plan: [], days: [], costs: [] });
    expect(nothing.why).toMatch(
      /^Nothing is known of the dates of B1, so no day is offered\. Cannot say: nothing/,
    );
    // Its water is read to a day of November, and nothing stands in for what comes after.
    const path = join(other, 'pool.csv');
    const hours = Array.from({ length: 96 }, (_, h) => new Date(Date.UTC(2025, 10, 1, h)).toISOString());
    writeFileSync(path, `Date Time (UTC),Water (°C)\n${hours.map((at) => `${at},4.5`).join('\n')}\n`);
    const asked = { station: 'pool' };
    await empty.load({
      files: [{ path }],
      asked,
      createStations: false,
      dryRun: false,
      who: 'x',
      progress: null,
    });
    const november = await ask('fr');
    expect(november).toMatchObject({ recommended: [], plan: [], days: [], costs: [] });
    expect(november.why).toMatch(
      /^On ne sait rien des dates de B1\s: aucun jour n’est proposé\. Impossible à dire\s: l’eau de pool n’est pas connue/,
    );
    await empty.close();
    rmSync(other, { recursive: true, force: true });
  });
});
