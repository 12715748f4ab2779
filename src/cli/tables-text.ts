import type { DevelopmentTable, Law, Needs, Source, StageRow } from '../../forecasting/table.js';
import { citedIn, type Language, percent, significant, stageName, words } from '../words/index.js';
import type { Face } from './face.js';
import { columns, paragraph } from './terminal-table.js';

/** Every table in a row, with the stages it has. */
export function tableList(tables: readonly DevelopmentTable[], language: Language): string {
  return columns(
    [
      words(language, 'column-table', {}),
      words(language, 'column-name', {}),
      words(language, 'column-stages', {}),
    ],
    tables.map((table) => [
      table.id,
      table.name[language],
      table.stages.map(({ stage }) => stageName(stage, language)).join(', '),
    ]),
  );
}

/** One table whole, each number beside its source. */
export function tableWhole(table: DevelopmentTable, face: Face): string {
  const { language } = face;
  const width = Math.min(face.columns, 110);
  const sourced = (text: string, sources: readonly Source[]) => [
    paragraph(text, width, '  '),
    ...sources.map((source) => paragraph(citation(source, language), width, '      ')),
  ];
  const { doNotHandle, temper, leavesBox } = table;
  return [
    `${table.id}: ${table.name[language]} (${table.species})`,
    ...table.stages.flatMap((row) => sourced(stageLine(row, language), row.sources)),
    ...sourced(
      words(language, 'table-do-not-handle', {
        from: percent(language, doNotHandle.from),
        to: percent(language, doNotHandle.to),
      }),
      doNotHandle.sources,
    ),
    ...sourced(words(language, 'table-row-temper', temper), temper.sources),
    ...sourced(words(language, 'table-row-leaves-box', leavesBox), leavesBox.sources),
    paragraph(
      words(language, 'table-spreads', {
        lots: significant(language, table.lotSpread),
        own: significant(language, table.ownSpread),
      }),
      width,
      '  ',
    ),
    ...table.harm.flatMap((limit) =>
      sourced(
        words(language, 'table-harm', {
          kind: limit.kind,
          severity: limit.severity,
          limit: significant(language, limit.limit),
          hours: limit.hours,
          from: percent(language, limit.fromProgress),
          to: percent(language, limit.toProgress),
        }),
        limit.sources,
      ),
    ),
    '',
    ...table.sources.map((source) => paragraph(citation(source, language), width)),
    '',
    paragraph(words(language, 'caution-estimate', {}), width),
    paragraph(words(language, 'caution-decide', {}), width),
  ].join('\n');
}

function citation(source: Source, language: Language): string {
  const { mark } = source;
  const cite = citedIn(language, source);
  return mark === undefined ? cite : `${cite} [${words(language, `mark-${mark}`, {})}]`;
}

function stageLine(row: StageRow, language: Language): string {
  return words(language, 'table-stage', {
    stage: stageName(row.stage, language),
    needs: needsText(row.needs, language),
    spread: significant(language, row.eggSpread),
    min: significant(language, row.validity.min),
    max: significant(language, row.validity.max),
  });
}

function needsText(needs: Needs, language: Language): string {
  if ('multipleOf' in needs)
    return `${significant(language, needs.factor)} × ${stageName(needs.multipleOf, language)}`;
  if ('sameAs' in needs) return `= ${stageName(needs.sameAs, language)}`;
  if ('after' in needs)
    return words(language, 'table-after', {
      stage: stageName(needs.after, language),
      law: lawText(needs.law, language),
    });
  return lawText(needs.law, language);
}

function lawText(law: Law, language: Language): string {
  const figure = (value: number) => significant(language, value);
  switch (law.form) {
    case 'thermal-units':
      return words(language, 'law-thermal-units', { units: figure(law.units), base: figure(law.base) });
    case 'power':
      return `log10 D = ${figure(law.log10a)} + (${figure(law.b)}) · log10(T − (${figure(law.alpha)}))`;
    case 'log-quadratic':
      return `log10 D = log10 ${figure(law.d0)} + (${figure(law.c1)} + ${figure(law.c2)} · T) · T`;
    case 'days-at':
      return words(language, 'law-days-at', {
        rows: law.rows.map(({ celsius, days }) => `${figure(celsius)} °C: ${figure(days)} d`).join('; '),
      });
  }
}
