import { shippedTables } from '../../../forecasting/index.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** No more eggs in boxes than the lot had; stages seen in eggs that were there. */
export function eggs(season: Season): Found[] {
  return [...fills(season), ...seen(season), ...stages(season), ...boxWater(season)];
}

function fills({ lots, boxes }: Season): Found[] {
  const inBoxes = new Map<string, number>();
  for (const { lot, eggs } of boxes.flatMap((box) => box.fills))
    inBoxes.set(lot, (inBoxes.get(lot) ?? 0) + eggs);
  return lots.flatMap(({ id, eggs }, i): Found[] => {
    const placed = inBoxes.get(id) ?? 0;
    if (placed <= eggs) return [];
    return [
      {
        path: ['lots', i, 'eggs'],
        trouble: { code: 'season.too-many-eggs', with: { lot: id, eggs, inBoxes: placed } },
      },
    ];
  });
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
