import type { Law, Needs, Source } from '../../../forecasting/table.js';
import { citedIn, decimal, named, significant, words } from '../../words/index.js';
import type { View } from '../view.js';

/** What a stage needs, in a line. */
export function needsText(needs: Needs, view: View): string {
  const { say, stage, language } = view;
  if ('multipleOf' in needs)
    return say('page-table-multiple', {
      factor: significant(language, needs.factor),
      stage: stage(needs.multipleOf),
    });
  if ('sameAs' in needs) return say('page-table-same', { stage: stage(needs.sameAs) });
  const law = lawText(needs.law, view);
  return 'after' in needs ? words(language, 'table-after', { stage: stage(needs.after), law }) : law;
}

function lawText(law: Law, { language }: View): string {
  const figure = (value: number) => significant(language, value);
  const plus = (value: number) => `${value < 0 ? '−' : '+'} ${figure(Math.abs(value))}`;
  const celsius = (value: number) => decimal(language, value, Number.isInteger(value) ? 0 : 1);
  switch (law.form) {
    case 'thermal-units':
      return words(language, 'law-thermal-units', { units: figure(law.units), base: figure(law.base) });
    case 'power':
      return `log₁₀ D = ${figure(law.log10a)} ${plus(law.b)} · log₁₀(T ${plus(-law.alpha)})`;
    case 'log-quadratic':
      return `log₁₀ D = log₁₀ ${figure(law.d0)} + (${figure(law.c1)} ${plus(law.c2)} · T) · T`;
    case 'days-at':
      return words(language, 'law-days-at', {
        rows: law.rows
          .map(
            (row) =>
              `${named(language, `${celsius(row.celsius)} °C`, figure(row.days))} ${language === 'fr' ? 'j' : 'd'}`,
          )
          .join('; '),
      });
  }
}

/** A source as it is cited, with how sure the figure is of it. */
export function citation(source: Source, { language }: View): string {
  const { mark } = source;
  const cite = citedIn(language, source);
  return mark === undefined ? cite : `${cite} [${words(language, `mark-${mark}`, {})}]`;
}
