import type { StationDays } from '../day-series.js';
import type { FillInput, ForecastRemark, LotInput } from '../forecast.js';
import type { DayNumber, DayTime } from '../units.js';
import type { Before } from '../windows/eggs.js';

/** A lot and a fill of it, with the way between fertilisation and the box settled. */
export interface Arrival {
  /** From here on the eggs gather the water of the box. */
  readonly planted: DayTime;
  readonly before: Before | null;
  readonly remarks: readonly ForecastRemark[];
}

/** A fill with the lot it is of and how its eggs came to the box. */
export interface ArrivedFill {
  readonly fill: FillInput;
  readonly lot: LotInput;
  readonly arrived: Arrival;
}

/** Eggs that go into a box within half a day of fertilisation bring nothing worth a word. */
const SAME_DAY = 0.5;

/**
 * What eggs were in before they were planted: a stated temperature, a hatchery station's readings (straight lines
 * over the days it lacks, its ends held), or, where neither is known, the box's own water from fertilisation on.
 */
export function arrival(
  lot: LotInput,
  fill: FillInput,
  station: (id: string) => StationDays | null,
): Arrival {
  const { fertilised, before } = lot;
  const wait = fill.planted - fertilised;
  const asStream = (remarks: ForecastRemark[]): Arrival => ({ planted: fertilised, before: null, remarks });
  if (wait < 0) return asStream([{ code: 'planted-before-fertilised', with: { lot: lot.lot } }]);
  const figures = { lot: lot.lot, days: wait };
  if (before.kind === 'none')
    return asStream(wait < SAME_DAY ? [] : [{ code: 'before-as-stream', with: figures }]);
  const first = Math.floor(fertilised);
  const length = Math.floor(fill.planted) - first + 1;
  const arrived = (mean: Float64Array, remark: ForecastRemark): Arrival => ({
    planted: fill.planted,
    before: { days: { firstDay: first, mean }, from: fertilised },
    remarks: wait < SAME_DAY ? [] : [remark],
  });
  if (before.kind === 'stated') {
    const mean = new Float64Array(length).fill(before.celsius);
    return arrived(mean, { code: 'before-stated', with: { ...figures, celsius: before.celsius } });
  }
  const tank = station(before.station);
  const known = tank === null ? null : bridged(tank, first, length);
  if (known === null)
    return asStream([{ code: 'before-station-silent', with: { ...figures, station: before.station } }]);
  const { mean, missing } = known;
  return arrived(mean, { code: 'before-station', with: { ...figures, station: before.station, missing } });
}

/** A station's daily means over a span, straight between the days it has; null when it has none in the span. */
function bridged(
  { days }: StationDays,
  first: DayNumber,
  length: number,
): { mean: Float64Array; missing: number } | null {
  const mean = new Float64Array(length);
  const known: number[] = [];
  for (let d = 0; d < length; d++) {
    const i = first + d - days.firstDay;
    mean[d] = i >= 0 && i < days.mean.length ? days.mean[i] : Number.NaN;
    if (Number.isFinite(mean[d])) known.push(d);
  }
  if (known.length === 0) return null;
  mean.fill(mean[known[0]], 0, known[0]);
  for (let k = 1; k < known.length; k++) {
    const [from, to] = [known[k - 1], known[k]];
    for (let d = from + 1; d < to; d++)
      mean[d] = mean[from] + ((d - from) / (to - from)) * (mean[to] - mean[from]);
  }
  const last = known[known.length - 1];
  mean.fill(mean[last], last + 1);
  return { mean, missing: length - known.length };
}
