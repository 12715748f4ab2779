import { shippedTables } from '../../../forecasting/index.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** No more eggs in boxes than the lot had; stages seen in eggs that were there. */
export function eggs(season: Season): Found[] {
  return [
    ...fills(season),
    ...compartments(season),
    ...adults(season),
    ...seen(season),
    ...stages(season),
    ...boxWater(season),
  ];
}

function fills({ lots, boxes }: Season): Found[] {
  const inBoxes = new Map<string, number>();
  for (const { lot, eggs } of boxes.flatMap((box) => box.fills))
    inBoxes.set(lot, (inBoxes.get(lot) ?? 0) + eggs);
  return lots.flatMap((lot, i): Found[] => {
    const { id, eggs } = lot;
    const placed = inBoxes.get(id) ?? 0;
    const elsewhere = (lot.control?.eggs ?? 0) + (lot.lost ?? 0) + (lot.leftOver ?? 0);
    if (placed <= eggs && placed + elsewhere > eggs)
      return [
        {
          path: ['lots', i, 'eggs'],
          trouble: { code: 'season.more-out-than-in', with: { lot: id, eggs, inBoxes: placed, elsewhere } },
        },
      ];
    if (placed <= eggs) return [];
    return [
      {
        path: ['lots', i, 'eggs'],
        trouble: { code: 'season.too-many-eggs', with: { lot: id, eggs, inBoxes: placed } },
      },
    ];
  });
}

/** Where a fill says what was left empty or doubled, its box holds no more eggs than that leaves room for. */
function compartments({ boxes, lots }: Season): Found[] {
  const tooFull = boxes.flatMap((box, i): Found[] => {
    const eggs = box.fills.reduce((sum, fill) => sum + fill.eggs, 0);
    const doubled = box.fills.reduce((sum, fill) => sum + (fill.doubled ?? 0), 0);
    const unfilled = box.fills.reduce((sum, fill) => sum + (fill.unfilled ?? 0), 0);
    const said = box.fills.some((fill) => fill.doubled !== null || fill.unfilled !== null);
    if (!said || box.compartments === null || eggs <= box.compartments - unfilled + doubled) return [];
    const room = { box: box.id, eggs, compartments: box.compartments - unfilled, doubled };
    return [{ path: ['boxes', i], trouble: { code: 'season.more-than-compartments', with: room } }];
  });
  const controls = lots.flatMap(({ control }, i): Found[] => {
    const { fertilised, of } = control ?? { fertilised: null, of: null };
    if (fertilised === null || of === null || fertilised <= of) return [];
    return [
      {
        path: ['lots', i, 'control'],
        trouble: { code: 'season.more-fertilised-than-looked-at', with: { fertilised, of } },
      },
    ];
  });
  return [...tooFull, ...controls];
}

/** A cross has a female's eggs and males' milt. */
function adults({ crosses, broodstock }: Season): Found[] {
  const sexOf = new Map(broodstock.map(({ id, sex }) => [id, sex]));
  const wrong = (i: number, cross: string, adult: string, sex: string, key: string): Found[] =>
    sexOf.get(adult) === sex
      ? [{ path: ['crosses', i, key], trouble: { code: 'season.not-that-sex', with: { cross, adult, sex } } }]
      : [];
  return crosses.flatMap(({ id, female, males }, i) => [
    ...wrong(i, id, female, 'male', 'female'),
    ...males.flatMap((male) => wrong(i, id, male, 'female', 'males')),
  ]);
}

function seen({ observed, boxes }: Season): Found[] {
  const lotsOf = new Map(boxes.map((box) => [box.id, box.fills.map((fill) => fill.lot)]));
  return observed.flatMap((one, i): Found[] => {
    const path = ['observed', i];
    const inBox = one.box === null ? null : lotsOf.get(one.box);
    if (one.box !== null && one.lot === null)
      return [
        {
          path,
          trouble: { code: 'season.which-lot', with: { box: one.box, lots: inBox?.join(', ') ?? '' } },
        },
      ];
    if (one.box === null && one.lot === null)
      return [{ path, trouble: { code: 'season.seen-of-what', with: {} } }];
    if (one.box !== null && one.lot !== null && inBox && !inBox.includes(one.lot))
      return [
        {
          path: [...path, 'lot'],
          trouble: { code: 'season.lot-not-in-box', with: { lot: one.lot, box: one.box } },
        },
      ];
    if (one.seen !== null && one.of !== null && one.seen > one.of)
      return [
        {
          path: [...path, 'seen'],
          trouble: { code: 'season.more-seen-than-looked-at', with: { seen: one.seen, of: one.of } },
        },
      ];
    return [];
  });
}

/** Stages that the lot's table knows. */
function stages({ observed, lots, tables }: Season): Found[] {
  const tableOf = new Map([...shippedTables, ...tables].map((table) => [table.id, table]));
  return observed.flatMap(({ lot, stage }, i): Found[] => {
    const table = tableOf.get(lots.find(({ id }) => id === lot)?.table ?? '');
    if (table === undefined || table.stages.some((row) => row.stage === stage)) return [];
    const known = table.stages.map((row) => row.stage).join(', ');
    return [
      {
        path: ['observed', i, 'stage'],
        trouble: { code: 'season.no-such-stage', with: { stage, table: table.id, known } },
      },
    ];
  });
}

function boxWater({ stations, boxes, sites }: Season): Found[] {
  const dry = new Set(stations.filter((s) => !s.quantities.includes('temperature')).map((s) => s.id));
  const trouble = (station: string) => ({ code: 'season.no-temperature', with: { station } }) as const;
  return [
    ...sites.flatMap(({ station }, i): Found[] =>
      station !== null && dry.has(station)
        ? [{ path: ['sites', i, 'station'], trouble: trouble(station) }]
        : [],
    ),
    ...boxes.flatMap((box, i) =>
      box.stations.flatMap((station, j): Found[] =>
        dry.has(station) ? [{ path: ['boxes', i, 'stations', j], trouble: trouble(station) }] : [],
      ),
    ),
  ];
}
