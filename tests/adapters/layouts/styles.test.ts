import fc from 'fast-check';
import { describe, it } from 'vitest';
import type { Asked } from '../../../adapters/index.js';
import { sameReadings } from './compare.js';
import { expectedOf } from './layouts-delimited.js';
import { invent } from './record.js';
import type { DateForm, Stamp } from './stamp.js';
import type { Style, TimeStyle } from './style.js';
import { readThrough } from './through.js';
import { write } from './write.js';

const dateForms: readonly DateForm[] = [
  'y-m-d',
  'y/m/d',
  'd/m/y',
  'd.m.y',
  'd-m-y',
  'm/d/y',
  'd/m/yy',
  'm/d/yy',
  'd-mon-y',
  'd mon y',
  'd month y',
  'mon d, y',
];

const stamps: fc.Arbitrary<Stamp> = fc.record({
  date: fc.constantFrom(...dateForms),
  clock: fc.constantFrom(12, 24),
  seconds: fc.boolean(),
  apart: fc.boolean(),
  between: fc.constant(' '),
  bare: fc.boolean(),
});

const timeStyles: fc.Arbitrary<TimeStyle> = fc.oneof(
  { weight: 6, arbitrary: stamps.map((stamp) => ({ kind: 'stamp' as const, stamp })) },
  { weight: 1, arbitrary: fc.constantFrom('epoch-s', 'epoch-ms', 'serial').map((kind) => ({ kind })) },
);

const valueNames = {
  en: [null, 'Temp', 'Temp.', 'Water temp', 'Water Temperature', 'WATER TEMP'],
  fr: [null, 'Temp.', 'Temp. eau', 'Température de l’eau', 'TEMPERATURE'],
};

const anyStyle: fc.Arbitrary<Style> = fc.constantFrom('en', 'fr').chain((language) =>
  fc.record({
    language: fc.constant(language),
    encoding: fc.constantFrom('utf-8', 'utf-8-bom', 'utf-16le', 'utf-16be', 'windows-1252'),
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    decimal: fc.constantFrom('.', ','),
    eol: fc.constantFrom('\n', '\r\n'),
    quoteAll: fc.boolean(),
    chatter: fc.constantFrom(
      [],
      ['Invented reach'],
      ['Relevé inventé', '', 'Interval 30 min', 'Serial number: 70-0042'],
    ),
    preambleIn: fc.constantFrom('line', 'cells'),
    saysStation: fc.constantFrom('preamble', 'no'),
    header: fc.constant(true),
    headerEvery: fc.constantFrom(0, 0, 17),
    rowNumbers: fc.boolean(),
    battery: fc.boolean(),
    events: fc.boolean(),
    notes: fc.constantFrom([], ['', 'Notes: ice on the 3rd; battery fine'], ['Fin du relevé']),
    time: timeStyles,
    zone: fc.constantFrom('UTC', 'UTC-04:00', 'UTC-03:30', 'UTC+05:45', 'America/Halifax'),
    saysOffset: fc.constantFrom('header', 'preamble', 'value', 'no'),
    unit: fc.constantFrom('C', 'F', 'K'),
    valueName: fc.constantFrom(...valueNames[language]),
    unitForm: fc.constantFrom('(u)', '[u]', ', u'),
    saysUnit: fc.constantFrom('header', 'preamble', 'no'),
    decimals: fc.integer({ min: 1, max: 3 }),
    secondColumn: fc.constant(false),
    missing: fc.constantFrom(null, null, null, '-999', 'NaN', '', '---', 'n/a'),
    gzipped: fc.boolean(),
  }),
);

/** What no program would write, or what nobody could read, made into what one would. */
function sensible(style: Style): Style {
  const { time } = style;
  const isStamp = time.kind === 'stamp';
  const offsetInValue =
    isStamp && time.stamp.date === 'y-m-d' && time.stamp.clock === 24 && !time.stamp.apart;
  const epoch = time.kind === 'epoch-s' || time.kind === 'epoch-ms';
  const zone = style.saysOffset === 'header' || style.saysOffset === 'preamble' || epoch;
  return {
    ...style,
    quoteAll: style.quoteAll || (style.decimal === ',' && style.delimiter === ','),
    saysOffset: epoch || (style.saysOffset === 'value' && !offsetInValue) ? 'no' : style.saysOffset,
    zone: zone && style.zone === 'America/Halifax' ? 'UTC-04:00' : style.zone,
    missing: style.missing === '' && style.delimiter === '\t' ? null : style.missing,
  };
}

function askedOf(style: Style): Asked {
  const epoch = style.time.kind === 'epoch-s' || style.time.kind === 'epoch-ms';
  return {
    ...(style.saysOffset === 'no' && !epoch ? { zone: style.zone } : {}),
    ...(style.saysUnit === 'no' ? { unit: style.unit } : {}),
  };
}

describe('any sensible mixture of delimiter, decimal, encoding, surroundings, dates, clocks and units', () => {
  it('comes back reading for reading', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyStyle.map(sensible),
        fc.integer({ min: 0, max: 1e9 }),
        fc.integer({ min: 0, max: 340 }),
        fc.constantFrom(15, 30, 60),
        async (style, seed, day, stepMinutes) => {
          const first = Date.UTC(2023, 0, 1) + day * 86_400_000;
          const calm =
            day > 60 && day < 78
              ? first + 20 * 86_400_000
              : day > 300 && day < 312
                ? first + 15 * 86_400_000
                : first;
          const readings = Math.ceil(1.6 * (1440 / stepMinutes));
          const series = invent({ seed, stations: ['ford'], first: calm, stepMinutes, readings })[0]!;
          sameReadings(await readThrough(write(series, style), askedOf(style)), expectedOf(series, style));
        },
      ),
      { numRuns: 400, seed: 20251120 },
    );
  });
});
