import type { FileAnswer, LoadAnswer } from '../group/answers.js';
import { decimal, type Language, words } from '../words/index.js';
import type { Face } from './face.js';
import { paragraph } from './terminal-table.js';

/** What came of every file, for a person: what was understood and assumed stands before what could not be used. */
export function loadText(answer: LoadAnswer, face: Face): string {
  const width = Math.min(face.columns, 110);
  return answer.files
    .map((file) =>
      fileLines(file, face.language)
        .map(([bullet, text]) => paragraph(text, width, bullet))
        .join('\n'),
    )
    .join('\n\n');
}

type Line = readonly [bullet: string, text: string];

function fileLines(file: FileAnswer, language: Language): Line[] {
  if (file.refused !== null) {
    const question = file.refused.question === null ? [] : [['  ? ', file.refused.question] as const];
    return [
      ['', words(language, 'cli-file-refused', { file: file.file, reason: file.refused.reason })],
      ...question,
    ];
  }
  return [
    ['', headline(file, language)],
    ...file.stations.map((station): Line => ['  ', stationLine(station, language)]),
    ...file.battery.map((one): Line => ['  ', batteryLine(one, language)]),
    ...layoutLine(file, language),
    ...file.assumed.map((sentence): Line => ['  - ', words(language, 'cli-file-assumed', { sentence })]),
    ...differingLine(file, language),
    ...unusableLines(file, language),
  ];
}

function headline({ file, load, alreadyLoaded, stations }: FileAnswer, language: Language): string {
  const readings = stations.reduce((sum, station) => sum + station.readings, 0);
  if (load === null) return words(language, 'cli-file-understood', { file, readings });
  if (alreadyLoaded) return words(language, 'cli-file-already', { file, load });
  return words(language, 'cli-file-stored', { file, readings, load });
}

function batteryLine(
  { highest, lowest, last, low, ...said }: FileAnswer['battery'][number],
  language: Language,
) {
  const timed = <One extends { readonly at: string }>(one: One | null) =>
    one === null ? null : { ...one, at: Date.parse(one.at) };
  return words(language, 'battery-said', {
    ...said,
    highest: timed(highest),
    lowest: timed(lowest),
    last: timed(last),
    low: timed(low),
    zone: 'UTC',
  });
}

function stationLine(
  { station, quantity, readings, first, last, min_c, max_c }: FileAnswer['stations'][number],
  language: Language,
): string {
  const range =
    min_c === null || max_c === null
      ? ''
      : ` (${decimal(language, min_c, 2)} … ${decimal(language, max_c, 2)} °C)`;
  return words(language, 'cli-file-station', {
    station,
    quantity:
      quantity === 'temperature'
        ? ''
        : `, ${words(language, quantity === 'level' ? 'quantity-level' : 'quantity-discharge', {})}`,
    readings,
    first,
    last,
    range,
  });
}

function layoutLine({ understood }: FileAnswer, language: Language): Line[] {
  if (understood === null) return [];
  const { zone, unit, timeColumns } = understood;
  return [
    [
      '  ',
      words(language, 'cli-file-layout', {
        zone,
        unit: unit === null ? null : `°${unit}`.replace('°K', 'K'),
        columns: timeColumns.join(' + '),
      }),
    ],
  ];
}

function differingLine({ differing, largestDifference }: FileAnswer, language: Language): Line[] {
  if (differing === 0) return [];
  return [
    [
      '  - ',
      words(language, 'cli-file-differing', {
        count: differing,
        largest: decimal(language, largestDifference ?? 0, 2),
      }),
    ],
  ];
}

function unusableLines({ unusable }: FileAnswer, language: Language): Line[] {
  if (unusable.count === 0) return [];
  return [
    ['  - ', words(language, 'cli-file-unusable', { count: unusable.count })],
    ...unusable.examples.map(
      ({ line, reason }): Line => ['      ', words(language, 'cli-file-unusable-line', { line, reason })],
    ),
  ];
}
