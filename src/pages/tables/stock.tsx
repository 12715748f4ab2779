import { type DevelopmentTable, daysAtConstant, wayTo } from '../../../forecasting/index.js';
import type { StockBeside } from '../../stock/index.js';
import { decimal } from '../../words/index.js';
import { Figures } from '../parts/figure.js';
import type { View } from '../view.js';

/** Water in which the two tables are set side by side, °C. */
const TEMPERATURES = [1, 3, 5, 8];

/** What the group's own lots have shown, beside the published table and with what it would change. */
export function StockSection({ view, all }: { view: View; all: readonly StockBeside[] }) {
  const { say } = view;
  return (
    <section id="stock">
      <h2>{say('page-stock-title', {})}</h2>
      {all.length === 0 ? <p>{say('page-stock-none', {})}</p> : null}
      {all.map((one) => (
        <>
          <p>{stockSentence(view, one)}</p>
          <Beside view={view} one={one} />
        </>
      ))}
      {all.length === 0 ? null : <p class="small">{say('page-stock-note', {})}</p>}
    </section>
  );
}

/** The same in a sentence, for a box too. */
export function stockSentence(view: View, { published, stock }: StockBeside): string {
  return view.say('page-stock-shown', {
    table: published.name[view.language],
    lots: stock.lots,
    shown: stock.shown,
    adjustment: stock.adjustment,
    spread: stock.spread,
    weight: stock.weight,
  });
}

function Beside({ view, one: { published, adjusted } }: { view: View; one: StockBeside }) {
  const { say, language } = view;
  const days = (table: DevelopmentTable, celsius: number) => {
    const found = table.stages.some(({ stage }) => stage === 'hatch')
      ? daysAtConstant(wayTo(table, 'hatch'), celsius)
      : Number.POSITIVE_INFINITY;
    return Number.isFinite(found) ? decimal(language, found, 0) : '–';
  };
  return (
    <Figures
      caption={say('page-stock-beside', {})}
      columns={[
        { name: say('page-stock-beside', {}) },
        { name: say('page-stock-published', {}), number: true },
        { name: say('page-stock-own', {}), number: true },
      ]}
      rows={TEMPERATURES.map((celsius) => [
        `${celsius} °C`,
        days(published, celsius),
        days(adjusted, celsius),
      ])}
    />
  );
}
