import fc from 'fast-check';
import { shippedTables } from '../../forecasting/index.js';

/** Text that YAML, terminals and spreadsheets like to take for something else. */
const awkward = fc.constantFrom(
  'null',
  '~',
  'yes',
  'on',
  '0x1F',
  '1e3',
  '007',
  '2025-11-04',
  '12:30',
  '- a',
  '? b',
  'a: b',
  'a #b',
  '# c',
  '*x',
  '&y',
  '!z',
  '%d',
  '@e',
  '`f`',
  '"g"',
  "it's",
  '{h}',
  '[i',
  '|',
  '>',
  '---',
  '...',
  '=1+1',
  'line\nline',
  'é œ ß 水',
  '<<',
  ',',
  'a\n\n  b\n',
  '\ttab',
  'Nothing: really',
);
const text = fc
  .oneof(awkward, fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' }))
  .filter((one) => one.trim() !== '' && !/[\p{Cc}\p{Cs}\u2028\u2029]/u.test(one.replace(/[\n\t]/g, '')));
const word = fc.stringMatching(/^[A-Za-z0-9]([A-Za-z0-9._-]{0,8}[A-Za-z0-9])?$/);
const maybe = <T>(what: fc.Arbitrary<T>) => fc.option(what, { nil: undefined });
const among = (ids: readonly string[]) => fc.constantFrom(...ids);
const tenths = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((value) => value / 10);

const ids = (least: number) =>
  fc.uniqueArray(word, { minLength: least, maxLength: 4, selector: (id) => id.toLowerCase() });

const header = text.map((one) => one.trim().slice(0, 40).trim()).filter((one) => one !== '');
const columnOfLayout = fc.oneof(
  header,
  fc.integer({ min: 1, max: 60 }).map((number) => `#${number}`),
);
/** A layout of downloads as the season file holds it. */
const layout = fc.record({
  name: header,
  match: fc.oneof(
    fc.record({ header: fc.array(header, { minLength: 1, maxLength: 3 }) }),
    fc.record({ opening: header }),
    fc.record({ fileName: header }),
  ),
  settled: fc.record(
    {
      delimiter: fc.constantFrom(',', ';', '\t', '|'),
      decimal: fc.constantFrom('.', ','),
      headerLine: fc.integer({ min: 0, max: 99 }),
      dateOrder: fc.constantFrom('ymd', 'dmy', 'mdy'),
      temperature: columnOfLayout,
      unit: fc.constantFrom('C', 'F', 'K'),
      zone: fc.constantFrom('UTC', 'UTC-03:30', 'America/St_Johns'),
      missing: fc.array(fc.constantFrom('null', '~', '-', '#N/A', 'n/d'), { minLength: 1, maxLength: 2 }),
    },
    { requiredKeys: [] },
  ),
});

/** Moments of 2025 from which every later one follows by hours, in UTC so that none is skipped or repeated. */
const moment = (hours: number) => new Date(Date.UTC(2025, 8, 1, hours)).toISOString();

/** Seasons in the shape of their file, right in every reference. */
export const inventedSeason: fc.Arbitrary<Record<string, unknown>> = fc
  .record({
    zone: fc.constantFrom(
      'America/St_Johns',
      'Asia/Kathmandu',
      'UTC',
      'UTC-03:30',
      'Europe/Oslo',
      'Australia/Lord_Howe',
    ),
    stations: ids(1),
    loggers: ids(1),
    sites: ids(1),
    adults: ids(1),
    lots: ids(1),
    boxes: ids(0),
  })
  .chain(({ zone, ...named }) =>
    fc.record({
      group: fc.record({
        name: text,
        zone: fc.constant(zone),
        language: fc.constantFrom('en', 'fr'),
        note: maybe(text),
      }),
      stations: each(named.stations, {
        name: maybe(text),
        kind: maybe(fc.constantFrom('stream', 'gravel', 'air', 'tank')),
        place: maybe(text),
        zone: maybe(fc.constantFrom('UTC', 'UTC+05:45', 'America/Halifax')),
        latitude: maybe(tenths(-90, 90)),
        reports: maybe(fc.boolean()),
      }),
      loggers: each(named.loggers, {
        serial: maybe(text),
        accuracy: maybe(tenths(0, 2)),
        memory: maybe(fc.integer({ min: 1, max: 99_999 })),
      }),
      deployments: fc.tuple(
        ...named.loggers.map((logger, i) =>
          fc.record({
            logger: fc.constant(logger),
            station: among(named.stations),
            from: fc.constant(moment(i)),
            to: maybe(fc.integer({ min: 1, max: 9000 }).map((hours) => moment(i + hours))),
            iceBath: maybe(fc.record({ before: maybe(tenths(-1, 1)), after: maybe(tenths(-1, 1)) })),
            read: maybe(fc.constant([moment(i + 1)])),
            clock: maybe(fc.constantFrom('UTC-03:00', 'America/Halifax')),
            clockChecks: maybe(
              fc.array(
                fc.record({
                  at: fc.integer({ min: 0, max: 9000 }).map(moment),
                  fast: fc.integer({ min: -90, max: 90 }),
                }),
                { maxLength: 2 },
              ),
            ),
          }),
        ),
      ),
      sites: each(named.sites, {
        station: maybe(among(named.stations)),
        access: maybe(text),
        depthM: maybe(tenths(0, 3)),
      }),
      broodstock: each(named.adults, {
        when: maybe(fc.constantFrom('2025-10-14', '2025-10-14T13:05:00Z')),
        sex: maybe(fc.constantFrom('female', 'male')),
      }),
      lots: each(named.lots, {
        fertilised: fc.integer({ min: 0, max: 1500 }).map(moment),
        eggs: fc.integer({ min: 1000, max: 99_999 }),
        table: among(shippedTables.map(({ id }) => id)),
        parents: maybe(fc.subarray(named.adults)),
        before: maybe(
          fc.oneof(fc.record({ station: among(named.stations) }), fc.record({ celsius: tenths(-1, 12) })),
        ),
      }),
      boxes: each(named.boxes, {
        site: among(named.sites),
        planted: fc.integer({ min: 1501, max: 1600 }).map(moment),
        lifted: maybe(fc.integer({ min: 1601, max: 9000 }).map(moment)),
        stations: maybe(fc.subarray(named.stations)),
        find: maybe(text),
        fills: fc.array(
          fc.record({ lot: among(named.lots), part: maybe(text), eggs: fc.integer({ min: 1, max: 50 }) }),
          { maxLength: 3 },
        ),
      }),
      visits: fc.array(
        fc.record({
          site: among(named.sites),
          when: fc.constantFrom('2025-12-01', '2026-01-20T15:30:00Z'),
          who: maybe(fc.array(text, { maxLength: 2 })),
          hand: maybe(
            fc.array(fc.record({ celsius: tenths(-1, 9), station: maybe(among(named.stations)) }), {
              maxLength: 2,
            }),
          ),
          ice: maybe(fc.constantFrom('on', 'out', 'under', 'none')),
          note: maybe(text),
        }),
        { maxLength: 3 },
      ),
      blocked: fc.array(
        fc.record({
          from: fc.constant('2026-05-01'),
          to: fc.constant('2026-05-09'),
          reason: text,
          site: maybe(among(named.sites)),
        }),
        { maxLength: 2 },
      ),
      checkedAndPutBack: fc.array(
        fc.record({
          box: named.boxes.length === 0 ? fc.constant('') : among(named.boxes),
          when: fc.constantFrom('2026-06-02', '2026-06-03T15:30:00Z'),
          alive: fc.constant(0),
          note: maybe(text),
        }),
        { maxLength: named.boxes.length === 0 ? 0 : 2 },
      ),
      tallies: fc.array(
        fc.record({
          box: named.boxes.length === 0 ? fc.constant('') : among(named.boxes),
          when: fc.constantFrom('2026-06-12', '2026-06-12T15:30:00Z'),
          counter: maybe(text),
          empty: fc.constant(0),
          dead: fc.integer({ min: 0, max: 900 }),
          alive: maybe(fc.constant(0)),
          kinds: maybe(fc.record({ cannotTell: fc.constant(0) })),
          siltMm: maybe(tenths(0, 30)),
          damage: maybe(text),
          countStands: fc.constant(true),
        }),
        { maxLength: named.boxes.length === 0 ? 0 : 2 },
      ),
      lifting: maybe(
        fc.record({
          rule: maybe(fc.constantFrom('before-emergence', 'after-emergence')),
          stillInBox: maybe(fc.constantFrom(0.01, 0.02, 0.1)),
          boxesADay: maybe(fc.integer({ min: 1, max: 40 })),
          trips: maybe(fc.constant([named.sites])),
          approved: maybe(
            fc.record({
              by: text,
              at: fc.constant('2026-06-01T12:00:00Z'),
              asOf: fc.constant('2026-06-01'),
              chance: fc.constant(0.5),
              days: fc.constant([{ date: '2026-06-12', boxes: ['any'] }]),
            }),
          ),
        }),
      ),
      seasonalCurve: maybe(
        fc.record({
          monthly: fc.array(tenths(-1, 20), { minLength: 12, maxLength: 12 }),
          spread: maybe(tenths(1, 3)),
        }),
      ),
      oldRule: maybe(
        fc.record({ thermalUnits: fc.integer({ min: 1, max: 900 }), base: maybe(tenths(-2, 4)) }),
      ),
      tables: fc.subarray(
        shippedTables.map((table) => ({ ...table, id: `our-${table.id}` })),
        { maxLength: 1 },
      ),
      layouts: fc.uniqueArray(layout, { maxLength: 2, selector: ({ name }) => name.trim().toLowerCase() }),
    }),
  );

/** One thing for each id, with the fields drawn for it. */
function each(
  names: readonly string[],
  fields: Record<string, fc.Arbitrary<unknown>>,
): fc.Arbitrary<unknown[]> {
  return fc.tuple(...names.map((id) => fc.record({ id: fc.constant(id), ...fields })));
}
