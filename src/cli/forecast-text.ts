import type { BoxAnswer, ForecastAnswer, IntervalAnswer, LotAnswer, WindowAnswer } from '../group/answers.js';
import { type Language, longDay, percent, shortDay, stageName, whole, words } from '../words/index.js';
import type { Face } from './face.js';
import { columns, paragraph } from './terminal-table.js';

/** The forecast on a terminal: every box in a row; one box whole where it was asked for alone. */
export function forecastText(forecast: ForecastAnswer, face: Face, whole: boolean): string {
  const { language } = face;
  const width = Math.min(face.columns, 110);
  const title = paragraph(
    words(language, 'cli-forecast-title', { date: longDay(language, day(forecast.asOf)) }),
    width,
  );
  const cautions = [
    words(language, 'cli-forecast-cautions', {}),
    ...forecast.cautions.map((caution) => paragraph(caution, width, '  - ')),
  ].join('\n');
  if (forecast.boxes.length === 0)
    return [title, words(language, 'cli-forecast-none', {}), cautions].join('\n\n');
  const body = whole
    ? forecast.boxes.map((box) => oneBox(box, language, width)).join('\n\n')
    : [overview(forecast.boxes, language), paragraph(words(language, 'cli-forecast-legend', {}), width)].join(
        '\n\n',
      );
  return [title, body, cautions].join('\n\n');
}

function overview(boxes: readonly BoxAnswer[], language: Language): string {
  const stages = [...new Set(boxes.flatMap((box) => box.windows.map((window) => window.stage)))];
  const head = [
    words(language, 'column-box', {}),
    words(language, 'column-now', {}),
    ...stages.map((stage) => stageName(stage, language)),
    words(language, 'column-water', {}),
  ];
  const rows = boxes.map((box) => [
    box.box,
    [...new Set(box.lots.map((lot) => whereNow(lot, language)))].join(' / '),
    ...stages.map((stage) =>
      brief(
        box.windows.find((window) => window.stage === stage),
        language,
      ),
    ),
    `${box.dataThrough === null ? '-' : shortDay(language, day(box.dataThrough))} ${box.days.measured}/${box.days.filled}/${box.days.projected}`,
  ]);
  return columns(head, rows);
}

function oneBox(box: BoxAnswer, language: Language, width: number): string {
  const parts = [
    `${words(language, 'column-box', {})} ${box.box} (${box.site}), ${whole(language, box.eggs)}`,
    waterLine(box, language),
    ...(box.lots.length > 1 ? [windowTable(box.windows, language)] : []),
    ...box.lots.map((lot) =>
      [
        words(language, 'cli-forecast-lot', { lot: lot.lot, eggs: lot.eggs, share: whereNow(lot, language) }),
        windowTable(lot.windows, language),
      ].join('\n'),
    ),
    section(words(language, 'cli-forecast-old-rule', {}), [box.oldRule.why], width),
    section(words(language, 'cli-forecast-method', {}), [box.method], width),
    section(words(language, 'cli-forecast-assumptions', {}), box.assumptions, width),
    section(words(language, 'cli-forecast-sharpen', {}), box.sharpenBy, width),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function waterLine(box: BoxAnswer, language: Language): string {
  if (box.dataThrough === null) return words(language, 'cli-forecast-no-water', {});
  return words(language, 'cli-forecast-water', {
    through: longDay(language, day(box.dataThrough)),
    ...box.days,
  });
}

function windowTable(windows: readonly WindowAnswer[], language: Language): string {
  const head = [
    words(language, 'column-stage', {}),
    words(language, 'column-first', {}),
    words(language, 'column-median', {}),
    words(language, 'column-last', {}),
    '',
  ];
  const rows = windows.map((window) => [
    stageName(window.stage, language),
    interval(window.first, language),
    interval(window.median, language),
    interval(window.last, language),
    [
      ...(window.passed ? [words(language, 'cli-forecast-passed', {})] : []),
      ...(window.unreached === null ? [] : [window.unreached]),
      ...(window.outsideValidity ? [words(language, 'cli-forecast-outside', {})] : []),
    ].join('; '),
  ]);
  return columns(head, rows);
}

function section(title: string, sentences: readonly string[], width: number): string {
  const said = sentences.filter((sentence) => sentence !== '');
  if (said.length === 0) return '';
  return [title, ...said.map((sentence) => paragraph(sentence, width, '  - '))].join('\n');
}

function brief(window: WindowAnswer | undefined, language: Language): string {
  if (window === undefined) return '-';
  return `${window.passed ? '✓ ' : ''}${interval(window.median, language)}`;
}

/** "4 Mar (27 Feb - 12 Mar)"; a date that is settled to the day stands alone. */
function interval({ p10, p50, p90 }: IntervalAnswer, language: Language): string {
  const show = (date: string | null) => (date === null ? '…' : shortDay(language, day(date)));
  if (p50 === null) return p10 === null ? '-' : `> ${show(p10)}`;
  return p10 === p90 ? show(p50) : `${show(p50)} (${show(p10)} - ${show(p90)})`;
}

function whereNow(lot: LotAnswer, language: Language): string {
  const ahead = lot.windows.find((window) => !window.passed)?.stage ?? null;
  const share = percent(language, ahead === null ? 1 : (lot.progress[ahead] ?? 0));
  if (lot.stage === 'not-fertilised') return words(language, 'now-not-fertilised', {});
  if (lot.stage === 'unknown') return words(language, 'now-unknown', {});
  if (lot.stage === 'fertilised')
    return words(language, 'now-fertilised', { next: ahead ?? 'eye-up', share });
  return words(language, 'now-stage', {
    stage: lot.stage,
    next: ahead,
    share,
  });
}

function day(date: string): number {
  return Date.parse(`${date}T00:00Z`) / 86_400_000;
}
