import type { Law, Needs, Source } from '../../../forecasting/table.js';
import { citedIn, significant, words } from '../../words/index.js';
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
  switch (law.form) {
    case 'thermal-units':
      return words(language, 'law-thermal-units', { units: figure(law.units), base: figure(law.base) });
    case 'power':
      return `log₁₀ D = ${figure(law.log10a)} + (${figure(law.b)}) · log₁₀(T − (${figure(law.alpha)}))`;
    case 'log-quadratic':
      return `log₁₀ D = log₁₀ ${figure(law.d0)} + (${figure(law.c1)} + ${figure(law.c2)} · T) · T`;
    case 'days-at':
      return words(language, 'law-days-at', {
        rows: law.rows.map(({ celsius, days }) => `${figure(celsius)} °C: ${figure(days)} d`).join('; '),
      });
  }
}

/** A source as it is cited, with how sure the figure is of it. */
export function citation(source: Source, { language }: View): string {
  const { mark } = source;
  const cite = citedIn(language, source);
  return mark === undefined ? cite : `${cite} [${words(language, `mark-${mark}`, {})}]`;
}
