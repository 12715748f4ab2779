import { daysOf, localDate, means } from './days.js';
import { holding, type Kept, type SampleFile, utf8, written } from './download.js';
import { dischargeAtBridge, levelAtBridge } from './freshet.js';
import { DAY, HOUR, midnight } from './hours.js';
import { type Instrument, keptBy } from './instruments.js';
import type { River } from './places.js';
import { climateDaily } from './writers/climate.js';
import { RIVER_ZONE, shown } from './writers/clocks.js';
import { gzipped, windows1252 } from './writers/encodings.js';
import { hydrometric } from './writers/hydrometric.js';
import { rdb } from './writers/rdb.js';
import { waterml } from './writers/waterml.js';

const WEIR: Instrument = { seed: 41, bias: 0.03, noise: 0.03, decimals: 1, interval: HOUR };
const BRIDGE: Instrument = { seed: 42, bias: -0.02, noise: 0.01, decimals: 2, interval: HOUR };

/** The stations that report all winter: five past winters, this one to mid-February, and the spring. */
export function reportingFiles(river: River): SampleFile[] {
  return [...pastFiles(river), ...winterFiles(river), ...springFiles(river), ...airFiles(river)];
}

function pastFiles(river: River): SampleFile[] {
  // The weir was dark for three weeks in its second winter, and loses an odd hour.
  const dark = [midnight('2022-01-10'), midnight('2022-01-31')] as const;
  const sent = keptBy(
    { ...WEIR, seed: 43 },
    river.weir,
    midnight('2020-10-01'),
    midnight('2025-10-01'),
  ).filter(({ at }) => at < dark[0] || at >= dark[1]);
  const lost = (i: number) => i % 977 === 400;
  const lines = sent.map(({ at, value }, i) => {
    const time = shown(at, 'UTC', "yyyy-MM-dd'T'HH:mm'Z'");
    return `weir,${time},${lost(i) ? '-999' : written(value, 1)}`;
  });
  const bridge = daysOf(river.bridge, midnight('2020-10-01'), midnight('2025-10-01'), 2);
  return [
    {
      file: 'weir-2020-2025.csv.gz',
      bytes: gzipped(utf8(['station,time_utc,water_c', ...lines].map((line) => `${line}\n`).join(''))),
      holds: [
        holding(
          'weir',
          sent.filter((_, i) => !lost(i)),
        ),
      ],
    },
    {
      file: 'bridge-daily-2020-2025.csv',
      bytes: utf8(
        [
          'station,latitude,longitude,date,water_c',
          ...bridge.map(({ at, mean }) => `bridge,47.0812,-66.4127,${localDate(at)},${written(mean, 2)}`),
        ]
          .map((line) => `${line}\n`)
          .join(''),
      ),
      holds: [holding('bridge', means(bridge), { daily: true })],
    },
  ];
}

const WINTER = [midnight('2025-10-01'), midnight('2026-02-15')] as const;
const SPRING = midnight('2026-05-01');
const END = midnight('2026-06-20');

function winterFiles(river: River): SampleFile[] {
  const weir = keptBy(WEIR, river.weir, ...WINTER);
  const bridge = keptBy(BRIDGE, river.bridge, ...WINTER);
  return [
    { file: 'weir-winter.rdb', bytes: rdb('09990001', weir), holds: [holding('weir', weir)] },
    {
      file: 'bridge-winter.xml.gz',
      bytes: gzipped(waterml('brumelore-bridge', bridge)),
      holds: [holding('bridge', bridge)],
    },
  ];
}

function springFiles(river: River): SampleFile[] {
  const [, february] = WINTER;
  const weir = keptBy({ ...WEIR, seed: 44 }, river.weir, february, SPRING);
  const bridge = keptBy({ ...BRIDGE, seed: 45 }, river.bridge, february, SPRING);
  const weirMay = keptBy({ ...WEIR, seed: 46 }, river.weir, SPRING, END);
  const bridgeMay = keptBy({ ...BRIDGE, seed: 47, decimals: 1 }, river.bridge, SPRING, END);
  const discharge = dischargeAtBridge(midnight('2026-05-21'), END);
  const level = levelAtBridge(discharge);
  return [
    {
      file: 'reporting-february-april.csv',
      bytes: longTable(weir, bridge),
      holds: [holding('weir', weir), holding('bridge', bridge)],
    },
    {
      file: 'stations-mai-juin.csv',
      bytes: wideTable(weirMay, bridgeMay),
      holds: [holding('weir', weirMay), holding('bridge', bridgeMay)],
    },
    {
      file: 'bridge-level.csv',
      bytes: hydrometric('01ZZ999', level, discharge),
      holds: [
        holding('bridge', level, { quantity: 'level' }),
        holding('bridge', discharge, { quantity: 'discharge' }),
      ],
    },
  ];
}

/** One reading a line, the station in a column, the offset in each value. */
function longTable(weir: readonly Kept[], bridge: readonly Kept[]): Uint8Array {
  const row = (station: string, { at, value }: Kept, decimals: number) =>
    `${station},${shown(at, RIVER_ZONE, "yyyy-MM-dd'T'HH:mm:ssZZ")},${written(value, decimals)}`;
  const rows = weir.flatMap((kept, i) => [row('weir', kept, 1), row('bridge', bridge[i]!, 2)]);
  return utf8(['station,time,temperature_c', ...rows].map((line) => `${line}\n`).join(''));
}

/** A station a column, French, the offset in the header. */
function wideTable(weir: readonly Kept[], bridge: readonly Kept[]): Uint8Array {
  const rows = weir.map(({ at, value }, i) => {
    const wall = shown(at, 'UTC-4', 'dd/MM/yyyy HH:mm');
    return `${wall};${written(value, 1, true)};${written(bridge[i]!.value, 1, true)}`;
  });
  const header = 'Date et heure (UTC-04:00);weir (°C);bridge (°C)';
  return windows1252([header, ...rows].map((line) => `${line}\r\n`).join(''));
}

/** Air, a file a year as the climate service gives them; this year's twice, as each was fetched. */
function airFiles(river: River): SampleFile[] {
  const name = 'BRUMELORE AIRFIELD';
  const file = (year: string, from: string, to: string, language: 'en' | 'fr'): SampleFile => {
    const days = daysOf(river.airfield, midnight(from), midnight(to) + DAY);
    return {
      file: year,
      bytes: climateDaily(name, days, language),
      holds: [holding('airfield', means(days), { daily: true })],
    };
  };
  return [
    file('air-2020.csv', '2020-10-01', '2020-12-31', 'en'),
    file('air-2021.csv', '2021-01-01', '2021-12-31', 'en'),
    file('air-2022.csv', '2022-01-01', '2022-12-31', 'en'),
    file('air-2023.csv', '2023-01-01', '2023-12-31', 'en'),
    file('air-2024.csv', '2024-01-01', '2024-12-31', 'en'),
    file('air-2025.csv', '2025-01-01', '2025-12-31', 'en'),
    file('air-2026-fevrier.csv', '2026-01-01', '2026-02-14', 'fr'),
    file('air-2026.csv', '2026-01-01', '2026-06-19', 'en'),
  ];
}
