import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { type Batch, readBatch, receiveEntries, settleEntry, whyWaiting } from '../../src/field/index.js';
import { type Group, openOwnGroup } from '../../src/group/index.js';
import { renderSeason, seasonFrom } from '../../src/season/index.js';
import { sayRefusal } from '../../src/words/refusals.js';

const NOW = Date.parse('2025-11-04T18:30:00Z');
const open: Group[] = [];
const folder = mkdtempSync(join(tmpdir(), 'underice-field-'));
afterAll(async () => {
  for (const group of open) await group.close();
  rmSync(folder, { recursive: true, force: true });
});

let group: Group;
let count = 0;
const written = {
  group: { name: 'Test', zone: 'America/Moncton' },
  stations: [{ id: 'pool' }],
  loggers: [{ id: 'L-1' }],
  sites: [{ id: 'pool', station: 'pool' }, { id: 'ford' }],
  lots: [{ id: 'A', fertilised: '2025-11-04 10:00', eggs: 1200, table: 'atlantic-salmon' }],
};

beforeEach(async () => {
  group ??= await openOwnGroup(join(folder, 'one'));
  if (open.length === 0) open.push(group);
  await group.applySeason(renderSeason(seasonFrom(written, 'test')), 'test', 'tests');
  count++;
});

const entry = (id: string, kind: string, fields: object, entered = NOW) => ({
  id: `${id}-${count}-0000`,
  kind,
  entered: new Date(entered).toISOString(),
  fields: { ...fields },
});
const batch = (...entries: Batch['entries']): Batch => ({
  now: new Date(NOW).toISOString(),
  phone: 'p1',
  entries,
});
const send = (sent: Batch, who = 'Ada') => receiveEntries(group, sent, who, NOW);
const planting = { site: 'pool', box: '1', lot: 'A', eggs: '1000', when: '2025-11-04 14:00' };

/** Sends one entry that must wait, and gives the sentence it waits with; nothing of it may be lost. */
let waited = 0;
async function waits(kind: string, fields: object): Promise<string> {
  const one = entry(`waits${waited++}`, kind, fields);
  const [receipt] = await send(batch(one));
  expect(receipt?.state).toBe('waiting');
  const season = await group.season();
  const kept = season.entries.find(({ id }) => id === one.id);
  expect(JSON.parse(kept?.fields ?? '')).toEqual(fields);
  if (kept === undefined) throw new Error('the entry was lost');
  const why = whyWaiting(season, kept, NOW);
  if (why === null) throw new Error('nothing keeps it waiting');
  expect(sayRefusal('fr', why)).not.toBe(sayRefusal('en', why));
  return sayRefusal('en', why);
}

describe('an entry', () => {
  test('sent twice is taken once, whoever sends it and in whatever company', async () => {
    const one = entry('planted', 'plant', planting);
    expect((await send(batch(one)))[0]?.state).toBe('taken');
    const seen = entry('visited', 'visit', { site: 'pool', celsius: '4.5' });
    expect((await send(batch(one, seen, seen), 'Bo')).map(({ state }) => state)).toEqual([
      'before',
      'taken',
      'before',
    ]);
    const season = await group.season();
    expect(season.boxes).toMatchObject([{ id: '1', site: 'pool', fills: [{ lot: 'A', eggs: 1000 }] }]);
    expect(season.visits).toHaveLength(1);
    expect(season.entries).toHaveLength(2);
  });

  test('of two people at one site: both visits are kept and told apart', async () => {
    await send(batch(entry('ada', 'visit', { site: 'pool', celsius: '4.5' })), 'Ada');
    await send(batch(entry('bo', 'visit', { site: 'pool', celsius: '4.6' })), 'Bo');
    const { visits } = await group.season();
    expect(visits.map(({ who, hand }) => [who, hand[0]?.celsius])).toEqual([
      [['Ada'], 4.5],
      [['Bo'], 4.6],
    ]);
  });

  test('of two people for one box: the second waits, and may be left aside or taken as another part', async () => {
    await send(batch(entry('ada', 'plant', { ...planting, eggs: '500', part: 'left' })), 'Ada');
    const second = entry('bo', 'plant', { ...planting, eggs: '500' });
    const third = entry('cy', 'plant', { ...planting, eggs: '400' });
    const states = (await send(batch(second, third), 'Bo')).map(({ state }) => state);
    expect(states).toEqual(['waiting', 'waiting']);
    await settleEntry(group, second.id, { take: { ...planting, eggs: '500', part: 'right' } }, 'Coral', NOW);
    await settleEntry(group, third.id, 'leave', 'Coral', NOW);
    const season = await group.season();
    expect(season.boxes[0]?.fills.map(({ part, eggs }) => [part, eggs])).toEqual([
      ['left', 500],
      ['right', 500],
    ]);
    expect(season.entries.map(({ who, state }) => [who, state])).toEqual([
      ['Ada', 'taken'],
      ['Bo', 'taken'],
      ['Bo', 'left'],
    ]);
    expect(JSON.parse(season.entries[2]?.fields ?? '')).toMatchObject({ eggs: '400' });
    await expect(settleEntry(group, third.id, 'leave', 'Coral', NOW)).rejects.toMatchObject({
      remark: { code: 'field-settled' },
    });
  });

  test('from a phone whose clock is a day off is set right', async () => {
    const DAY = 86_400_000;
    const sent = {
      ...batch(entry('clock', 'visit', { site: 'pool' }, NOW + DAY - 3_600_000)),
      now: new Date(NOW + DAY).toISOString(),
    };
    await send(sent);
    const season = await group.season();
    expect(season.visits[0]?.when.at).toBe('2025-11-04T13:30:00-04:00');
    expect(season.entries[0]?.fast).toBe(86_400);
  });

  test('of a logger becomes its deployment: in, read, out, with its clock and ice bath', async () => {
    const at = (hour: string) => `2025-11-0${hour}`;
    const logger = (did: string, when: string, more: object = {}) =>
      entry(did, 'visit', { site: 'pool', when, loggers: [{ logger: 'L-1', did, ...more }] });
    const receipts = await send(
      batch(
        logger('in', at('1 10:00'), { iceBath: '0.1' }),
        logger('read', at('2 10:00'), { fast: '140' }),
        logger('out', at('3 10:00'), { fast: '150', iceBath: '0.2' }),
      ),
    );
    expect(receipts.map(({ state }) => state)).toEqual(['taken', 'taken', 'taken']);
    expect((await group.season()).deployments).toMatchObject([
      {
        station: 'pool',
        to: '2025-11-03T10:00:00-04:00',
        read: ['2025-11-02T10:00:00-04:00'],
        clockChecks: [{ fast: 140 }, { fast: 150 }],
        iceBath: { before: 0.1, after: 0.2 },
      },
    ]);
  });

  test('of a stripping is counted from its samples', async () => {
    const fields = {
      lot: 'B',
      table: 'atlantic-salmon',
      counted: 'displacement',
      samples: [
        { eggs: '100', amount: '12.4' },
        { eggs: '100', amount: '12.6' },
      ],
      total: '500',
      controlEggs: '100',
      disinfectedWith: 'iodophor',
      disinfectedMinutes: '10',
    };
    expect((await send(batch(entry('strip', 'strip', fields))))[0]?.state).toBe('taken');
    expect((await group.season()).lots[1]).toMatchObject({
      eggs: 4000,
      measured: { total: 500 },
      control: { eggs: 100 },
      disinfected: { with: 'iodophor', minutes: 10 },
    });
  });
});

describe('what cannot be taken waits with a clear sentence, kept word for word', () => {
  test.each([
    [
      'more eggs out than in',
      'plant',
      { ...planting, eggs: '1300' },
      /1,300 eggs of lot “A”, which had 1,200/,
    ],
    ['negative', 'plant', { ...planting, eggs: '-5' }, /-5/],
    ['text for a number', 'plant', { ...planting, eggs: 'about a thousand' }, /not a number/],
    ['13.000', 'plant', { ...planting, eggs: '13.000' }, /two ways.*13000|13000/],
    ['13,000', 'plant', { ...planting, eggs: '13,000' }, /13000/],
    // Set apart by a space it can be read in one way only, and is.
    ['13 000', 'plant', { ...planting, eggs: '13 000' }, /13,000 eggs of lot “A”, which had 1,200/],
    [
      'planted before its lot was fertilised',
      'plant',
      { ...planting, when: '2025-11-03 14:00' },
      /before they were fertilised/,
    ],
    ['a lot that is not there', 'plant', { ...planting, lot: 'Z' }, /no lot “Z”/],
    ['a box with no lot named', 'plant', { ...planting, lot: '' }, /“Lot” is missing/],
    ['a visit in the future', 'visit', { site: 'pool', when: '2025-12-24 12:00' }, /has not come yet/],
    ['a site that is not there', 'visit', { site: 'nowhere' }, /no site “nowhere”/],
    [
      'a logger taken out that lies nowhere',
      'visit',
      { site: 'pool', loggers: [{ logger: 'L-1', did: 'out' }] },
      /not known to lie/,
    ],
    ['a kind nobody knows', 'census', { heads: 3 }, /does not know/],
    ['a field nobody asked for', 'visit', { site: 'pool', colour: 'blue' }, /colour/],
    [
      'a photograph that was never sent',
      'visit',
      { site: 'pool', photographs: ['../../etc/passwd'] },
      /kept photograph/,
    ],
  ])('%s', async (_what, kind, fields, sentence) => {
    expect(await waits(kind, fields)).toMatch(sentence);
  });

  test('a box at two sites, and a box planted twice', async () => {
    await send(batch(entry('first', 'plant', { ...planting, eggs: '100' })));
    expect(await waits('plant', { ...planting, eggs: '100', site: 'ford' })).toMatch(/lies at site “pool”/);
    expect(await waits('plant', { ...planting, eggs: '100' })).toMatch(/planted already/);
  });

  test('a count that cannot be', async () => {
    await send(batch(entry('plant-c', 'plant', planting)));
    const count = { box: '1', when: '2025-11-04 14:20', empty: '10', dead: '0', alive: '0' };
    expect(await waits('tally', { ...count, empty: '1001' })).toMatch(/too many/);
    expect(await waits('tally', { ...count, dead: '-3' })).toMatch(/outside what can be/);
    expect(await waits('tally', { ...count, alive: 'lots' })).toMatch(/not a number/);
    expect(await waits('tally', { ...count, site: 'ford' })).toMatch(/lies at site “pool”/);
    expect(await waits('tally', { ...count, when: '2025-11-01 10:00' })).toMatch(/before it was planted/);
    expect(await waits('tally', { ...count, box: '77' })).toMatch(/no box “77” yet/);
    expect(await waits('tally', { box: '1', fungus: '3' })).toMatch(/Nothing was counted|counted/);
    expect(await waits('check', { box: '1', empty: '3' })).toMatch(/“Alive” is missing/);
    expect((await group.season()).boxes[0]?.lifted).toBeNull();
    // Two people count one box: both counts are kept, and the box is lifted once.
    const two = await send(
      batch(entry('ada', 'tally', count), entry('ben', 'tally', { ...count, empty: '12' })),
    );
    expect(two.map(({ state }) => state)).toEqual(['taken', 'taken']);
    const { tallies, boxes } = await group.season();
    expect(tallies.map(({ empty, counter }) => [empty, counter])).toEqual([
      [10, 'Ada'],
      [12, 'Ada'],
    ]);
    expect(boxes[0]?.lifted).toMatch(/^2025-11-04/);
  });

  test('one that waits for what another phone has is taken as soon as that has come', async () => {
    await send(batch(entry('find', 'find', { box: '9', tiedTo: 'the cedar' })));
    await send(batch(entry('planted', 'plant', { ...planting, box: '9', lot: 'B', when: '' })));
    const twice = entry('twice', 'plant', { ...planting, eggs: '5000' });
    await send(batch(twice));
    expect((await group.season()).boxes).toEqual([]);
    const strip = { lot: 'B', table: 'atlantic-salmon', eggs: '1500', when: '2025-11-04 11:00' };
    await send(batch(entry('strip', 'strip', strip)));
    const season = await group.season();
    expect(season.boxes[0]).toMatchObject({ id: '9', tiedTo: 'the cedar', fills: [{ lot: 'B' }] });
    // One that is wrong, and not early, waits for a person all the same.
    expect(season.entries.map(({ state }) => state)).toEqual(['taken', 'taken', 'waiting', 'taken']);
    expect(season.entries[0]?.fields).toBeNull();
  });

  test('a stripping day in the order people write it down: adults, their cross, then the lot', async () => {
    const when = '2025-11-04 11:00';
    const receipts = await send(
      batch(
        entry('cross', 'cross', { id: 'F1-M1', female: 'F1', males: 'M1', lot: 'B', when }),
        entry('adult-f', 'adult', { id: 'F1', sex: 'female', when }),
        entry('adult-m', 'adult', { id: 'M1', sex: 'male', when }),
        entry('strip', 'strip', { lot: 'B', table: 'atlantic-salmon', eggs: '900', parents: 'F1, M1', when }),
      ),
    );
    expect(receipts.map(({ state }) => state)).toEqual(['taken', 'taken', 'taken', 'taken']);
    expect((await group.season()).crosses).toMatchObject([{ female: 'F1', lot: 'B' }]);
  });

  test('is told in words of the question that was asked, and none of a file', async () => {
    expect(await waits('plant', { ...planting, eggs: 'many' })).toMatch(/^Eggs: .*not a number/);
    expect(await waits('strip', { lot: 'B', table: 'atlantic-salmon' })).toBe('“Eggs” is missing.');
    expect(await waits('cross', { id: 'C', female: 'F9' })).toBe('There is no broodstock “F9” yet.');
  });
});

describe('a forged sending is refused whole', () => {
  test.each([
    ['not a batch', 'hello'],
    [
      'an id that is a path',
      {
        now: new Date(NOW).toISOString(),
        entries: [{ id: '../../../x', kind: 'visit', entered: new Date(NOW).toISOString(), fields: {} }],
      },
    ],
    ['no clock', { entries: [] }],
    [
      'fields without end',
      {
        now: new Date(NOW).toISOString(),
        entries: [
          {
            id: 'abcdefgh',
            kind: 'visit',
            entered: new Date(NOW).toISOString(),
            fields: { note: 'x'.repeat(30_000) },
          },
        ],
      },
    ],
  ])('%s', (_what, given) => {
    expect(() => readBatch(given)).toThrow(expect.objectContaining({ name: 'FieldRefused' }));
  });
});
