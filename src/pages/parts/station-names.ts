import type { ForecastRemark } from '../../../forecasting/forecast.js';
import type { Season } from '../../season/index.js';

/** The figures of a remark that are a station's id, or several with commas between. */
const STATIONS = ['station', 'stations', 'first', 'as'] as const;

/** A remark of the forecast with its stations by the names people gave them, as everywhere else on the pages. */
export function byStationNames(
  remarks: readonly ForecastRemark[],
  { stations }: Season,
): readonly ForecastRemark[] {
  const names = new Map(stations.map(({ id, name }) => [id, name]));
  const named = (ids: string) =>
    ids
      .split(', ')
      .map((id) => names.get(id) ?? id)
      .join(', ');
  return remarks.map((remark) => {
    const figures = { ...remark.with };
    for (const key of STATIONS) {
      const ids: unknown = Reflect.get(figures, key);
      if (typeof ids === 'string') Reflect.set(figures, key, named(ids));
    }
    return Object.assign({}, remark, { with: figures });
  });
}
