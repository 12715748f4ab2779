import type { Law } from './table.js';
import type { Celsius } from './units.js';

/** Water colder than this is read as this: no river is, and a logger that says so is wrong or out of the water. */
export const COLDEST: Celsius = -0.5;

/**
 * Days-to-stage D at constant temperature T, days. Infinity where the law gathers nothing.
 *
 * - thermal units: D = units / (T - base); never at or below the base.
 * - power law: log10 D = log10 a + b log10(T - alpha) (Crisp 1981); never at or below alpha.
 * - log-quadratic: log10 D = log10 d0 + (c1 + c2 T) T (Gorodilov 1996); held at its lowest D in water warmer
 *   than the bottom of the parabola, where the formula would have eggs slow down again.
 * - days at temperatures: ln D straight between the two listed temperatures around T. Colder than the first row it
 *   goes on along the first two rows; warmer than the last row it stays at the last row, since no faster
 *   development was seen. Both lie outside a table's range of validity, and a window leaning on them says so.
 *
 * T is floored at -0.5 °C.
 *
 * @example daysToStage({ form: 'power', log10a: 5.1908, b: -2.6562, alpha: -11 }, 0) // 265.86, Crisp 1981
 */
export function daysToStage(law: Law, celsius: Celsius): number {
  const t = Math.max(COLDEST, celsius);
  switch (law.form) {
    case 'thermal-units':
      return t > law.base ? law.units / (t - law.base) : Number.POSITIVE_INFINITY;
    case 'power':
      return t > law.alpha
        ? 10 ** (law.log10a + law.b * Math.log10(t - law.alpha))
        : Number.POSITIVE_INFINITY;
    case 'log-quadratic': {
      const bottom = -law.c1 / (2 * law.c2);
      const held = law.c2 > 0 ? Math.min(t, bottom) : t;
      return law.d0 * 10 ** ((law.c1 + law.c2 * held) * held);
    }
    case 'days-at':
      return daysBetweenRows(law.rows, t);
  }
}

/**
 * Share of the way to the stage gathered in one day at T: 1 / D, per day; 0 where the law gathers nothing.
 *
 * @example dailyRate({ form: 'thermal-units', units: 500, base: 0 }, 5) // 0.01
 */
export function dailyRate(law: Law, celsius: Celsius): number {
  return 1 / daysToStage(law, celsius);
}

function daysBetweenRows(rows: Extract<Law, { form: 'days-at' }>['rows'], t: Celsius): number {
  const last = rows.length - 1;
  if (t >= rows[last].celsius) return rows[last].days;
  let i = 0;
  while (i < last - 1 && t >= rows[i + 1].celsius) i++;
  const cold = rows[i];
  const warm = rows[i + 1];
  const share = (t - cold.celsius) / (warm.celsius - cold.celsius);
  return cold.days * (warm.days / cold.days) ** share;
}
