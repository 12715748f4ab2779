import { arrivals, type BoxQuestion, boxForecast } from './boxes/box-forecast.js';
import { leadingStation } from './boxes/leading-station.js';
import { neededSpan, type StationWater, stationWater, unknownStation } from './boxes/station-waters.js';
import { refuseInvalid } from './check-table.js';
import type { StationDays } from './day-series.js';
import type { BoxInput, Forecast, ForecastInput, ForecastRemark, LotInput } from './forecast.js';
import { withChecks } from './lifting/check.js';
import { ForecastMemory, type Renewal } from './memory/forecast-memory.js';
import { evidenceByLot } from './observations/evidence.js';
import type { DayTime } from './units.js';

/**
 * When the eggs of every box come to every stage of their table, as known on the as-of day. Each station's water is
 * worked out once and shared by its boxes; what is drawn depends on the seed and on names, never on order: same
 * input, same answer.
 *
 * @param memory what the forecast before left: it saves work and changes nothing of the answer
 * @throws TableRefused for a lot whose table cannot be used.
 */
export function forecast(input: ForecastInput, memory = new ForecastMemory()): Forecast {
  for (const table of new Set(input.lots.map((lot) => lot.table))) refuseInvalid(table);
  const stations = new Map(input.stations.map((one) => [one.station, one]));
  const lots = new Map(input.lots.map((one) => [one.lot, one]));
  const questions = input.boxes.map((box) => boxQuestion(box, stations, lots));
  const renewal = memory.since(input);
  const waterFor = waters(input, questions, renewal);
  const evidence = evidenceByLot(input, questions, waterFor);
  const boxes = questions.map((question) => {
    const water = waterFor(question);
    return renewal.box(question, water, evidence, () => boxForecast(input, question, water, evidence));
  });
  memory.keep(renewal);
  return withChecks({ asOf: input.asOf, boxes }, input.checks ?? []);
}

function boxQuestion(
  box: BoxInput,
  stations: ReadonlyMap<string, StationDays>,
  lots: ReadonlyMap<string, LotInput>,
): BoxQuestion {
  const station = (id: string) => stations.get(id) ?? null;
  const lot = (id: string) => lots.get(id) ?? null;
  const { fills, remarks } = arrivals(box, lot, station);
  const leading = leadingStation(box, station) ?? unknownStation(box.stations[0] ?? box.box);
  const unknown = box.stations
    .filter((id) => station(id) === null)
    .map((id): ForecastRemark => ({ code: 'unknown-station', with: { station: id } }));
  return { box, fills, leading, remarks: [...remarks, ...unknown] };
}

/** One water a station, over the days that any of its boxes needs. */
function waters(
  input: ForecastInput,
  questions: readonly BoxQuestion[],
  renewal: Renewal,
): (question: BoxQuestion) => StationWater {
  const starts = new Map<string, DayTime[]>();
  for (const { leading, fills } of questions) {
    const of = starts.get(leading.station) ?? [];
    starts.set(leading.station, of);
    for (const { arrived } of fills) of.push(arrived.planted);
  }
  const made = new Map<string, StationWater>();
  return ({ leading }) => {
    let water = made.get(leading.station);
    if (water === undefined) {
      const of = starts.get(leading.station) ?? [];
      const span = neededSpan(of.length > 0 ? of : [input.asOf]);
      water = renewal.water(leading.station, span, (before, changes) =>
        stationWater(input, leading, span, before, changes),
      );
      made.set(leading.station, water);
    }
    return water;
  };
}
