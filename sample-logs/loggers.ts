import { holding, type Kept, rounded, type SampleFile, utf8, written } from './download.js';
import { HOUR, midnight, valueAt } from './hours.js';
import { keptBy } from './instruments.js';
import type { River } from './places.js';
import { RIVER_ZONE, serialDay, shown } from './writers/clocks.js';
import { utf8Marked, utf16, windows1252 } from './writers/encodings.js';

const MINUTE = 60_000;
/** Local standard time on a date. */
const clock = (date: string, hours: number) => midnight(date) + hours * HOUR;

const placedUpper = clock('2025-10-28', 13);
const placedFord = clock('2025-10-28', 15);
const placedBraid = clock('2025-10-29', 10);

/** Frazil ice carried this logger up into slush when the river closed; it came free four days later. */
const SLUSH = { from: clock('2025-12-05', 20), to: clock('2025-12-09', 14) };

/** Started in the truck three hours before it was put in; a tenth of a degree too warm, as the ice bath showed. */
function upperLogger(river: River, to: number): Kept[] {
  const truck = (at: number) => (at < placedUpper ? 17.5 : valueAt(river.upper, at));
  return keptBy(
    { seed: 31, bias: 0.1, noise: 0.012, decimals: 2, interval: HOUR },
    truck,
    clock('2025-10-28', 10),
    to,
  );
}

/** Its clock kept the summer time it was started in, and gained: 140 s by December. Lost under the ice in January. */
function fordLogger(river: River): Kept[] {
  const instrument = { seed: 32, bias: -0.05, noise: 0.02, decimals: 1, interval: 30 * MINUTE, fast: 140 };
  return keptBy(instrument, river.ford, placedFord, clock('2025-12-04', 11));
}

/** Wall time, summer and winter: the hour of 2 November stands in the file twice. */
function braidLogger(river: River, from: number, to: number): Kept[] {
  const instrument = { seed: 33, bias: 0.06, noise: 0.015, decimals: 2, interval: 30 * MINUTE };
  const slush = (at: number) => {
    const air = Math.max(-18, Math.min(0, valueAt(river.airfield, at - 4 * HOUR)));
    return -0.2 + 0.016 * air;
  };
  const there = (at: number) => (at >= SLUSH.from && at < SLUSH.to ? slush(at) : valueAt(river.braid, at));
  return keptBy(instrument, there, from, to);
}

export function loggerFiles(river: River): SampleFile[] {
  const upperEarly = upperLogger(river, clock('2025-12-03', 13));
  const upperAll = upperLogger(river, clock('2026-06-16', 11));
  const ford = fordLogger(river);
  const readBraid = clock('2026-01-20', 13);
  const braidWinter = braidLogger(river, placedBraid, readBraid);
  const braidSpring = braidLogger(river, readBraid + HOUR, clock('2026-06-16', 15));
  const tank = tankLogger(river);
  return [
    {
      file: 'upper-pool_2025-12-03.csv',
      bytes: upperText(upperEarly),
      holds: [holding('upper', upperEarly)],
    },
    { file: 'gue_2025-12-04.csv', bytes: fordText(ford), holds: [holding('ford', ford)] },
    { file: 'braid 2026-01-20.txt', bytes: braidText(braidWinter), holds: [holding('braid', braidWinter)] },
    { file: 'hatchery-tank.csv', bytes: tankText(tank), holds: [holding('tank', tank.map(asCelsius))] },
    { file: 'upper-pool_2026-06-16.csv', bytes: serialText(upperAll), holds: [holding('upper', upperAll)] },
    { file: 'braid 2026-06-16.txt', bytes: epochText(braidSpring), holds: [holding('braid', braidSpring)] },
  ];
}

/** Preamble with serial number and offset, a comma, ISO dates. */
function upperText(kept: readonly Kept[]): Uint8Array {
  const lines = [
    'Stream temperature logger',
    'Serial number: 20417-U',
    'Clock: UTC-04:00',
    'Interval: 60 min',
    '',
    'Date and time,Temperature (°C),Battery (V)',
    ...kept.map(
      ({ at, value }, i) =>
        `${shown(at, 'UTC-4', 'yyyy-MM-dd HH:mm:ss')},${written(value, 2)},${written(3.62 - i / 40_000, 2)}`,
    ),
  ];
  return utf8(lines.map((line) => `${line}\n`).join(''));
}

/** French, Windows-1252, semicolon and decimal comma, day first, date and hour apart; nothing says the offset. */
function fordText(kept: readonly Kept[]): Uint8Array {
  const lines = [
    'Enregistreur no 20388 - gué',
    'Date;Heure;Température (°C);Remarque',
    ...kept.map(({ at, value }, i) => {
      const remark = i === kept.length - 1 ? 'arrêté à la main' : '';
      return `${shown(at, 'UTC-3', 'dd/MM/yyyy;HH:mm')};${written(value, 1, true)};${remark}`;
    }),
  ];
  return windows1252(lines.map((line) => `${line}\r\n`).join(''));
}

/** UTF-16 with tabs, month names and a twelve-hour clock that follows summer time. */
function braidText(kept: readonly Kept[]): Uint8Array {
  const rows = kept.map(({ at, value }, i) => {
    const wall = shown(at, RIVER_ZONE, 'd MMM yyyy h:mm:ss a', 'en-US').toUpperCase();
    return `${i + 1}\t${wall}\t${written(value, 2)}`;
  });
  return utf16(['No.\tDate and time\tWater temperature, °C', ...rows].map((line) => `${line}\r\n`).join(''));
}

const tankLogger = (river: River): Kept[] =>
  keptBy(
    { seed: 34, bias: 0.1, noise: 0.05, decimals: 1, interval: 15 * MINUTE },
    (at) => valueAt(river.tank, at) * 1.8 + 32,
    clock('2025-11-03', 12),
    clock('2025-11-10', 12),
  );

/** To the ten-thousandth of a degree, as readings are kept. */
const asCelsius = ({ at, value }: Kept): Kept => ({ at, value: rounded(((value - 32) * 5) / 9, 4) });

/** °F, month first, twelve-hour clock. */
function tankText(kept: readonly Kept[]): Uint8Array {
  const rows = kept.map(
    ({ at, value }) =>
      `"${shown(at, RIVER_ZONE, 'MM/dd/yyyy hh:mm a', 'en-US').toUpperCase()}","${written(value, 1)}"`,
  );
  return utf8(['"Date/Time","Temp (°F)"', ...rows].map((line) => `${line}\r\n`).join(''));
}

/** The same logger once more, through a spreadsheet: serial days, the offset in the header. */
function serialText(kept: readonly Kept[]): Uint8Array {
  const rows = kept.map(({ at, value }) => `${serialDay(at, 'UTC-4').toFixed(6)},${written(value, 2)}`);
  return utf8(['Date and time (UTC-04:00),Temperature (°C)', ...rows].map((line) => `${line}\n`).join(''));
}

/** Epoch milliseconds between bars, French headers, a byte order mark, notes at the end. */
function epochText(kept: readonly Kept[]): Uint8Array {
  const rows = kept.map(({ at, value }) => `${at}|${written(value, 2)}`);
  const notes = ['Fin du relevé', 'Pile : bonne'];
  return utf8Marked(['Instant (ms)|Température (°C)', ...rows, ...notes].map((line) => `${line}\n`).join(''));
}
