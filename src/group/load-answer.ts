import type { FileOutcome, LoadedBattery } from '../loading/index.js';
import type { LoadedSeries } from '../store/index.js';
import { isoInstant, type Language, say } from '../words/index.js';
import type { BatteryAnswer, FileAnswer, LoadAnswer, LoadedStation, LoadsAnswer } from './answers.js';
import type { LoadRow } from './group.js';

/** What came of every file, as other programs get it. */
export function loadAnswer(outcomes: readonly FileOutcome[], language: Language): LoadAnswer {
  return { files: outcomes.map((outcome) => fileAnswer(outcome, language)) };
}

function fileAnswer(outcome: FileOutcome, language: Language): FileAnswer {
  const { refused, understood } = outcome;
  return {
    file: outcome.file,
    stations: outcome.stations.map(loadedStation),
    understood,
    assumed: outcome.assumed.map((remark) => say(language, remark)),
    unusable: {
      count: outcome.unusable.count,
      examples: outcome.unusable.examples.map(({ line, reason }) => ({
        line,
        reason: say(language, reason),
      })),
    },
    battery: outcome.battery.map(batteryAnswer),
    load: outcome.load === null ? null : String(outcome.load),
    alreadyLoaded: outcome.alreadyLoaded,
    differing: outcome.differing,
    largestDifference: outcome.differing > 0 ? Number(outcome.largestDifference.toFixed(4)) : null,
    refused:
      refused === null
        ? null
        : {
            reason: say(language, refused.reason),
            question: refused.question === null ? null : say(language, refused.question),
          },
  };
}

function batteryAnswer({ highest, lowest, last, low, ...said }: LoadedBattery): BatteryAnswer {
  const timed = <One extends { readonly at: number }>(one: One | null) =>
    one === null ? null : { ...one, at: isoInstant(one.at) };
  return { ...said, highest: timed(highest), lowest: timed(lowest), last: timed(last), low: timed(low) };
}

function loadedStation(series: LoadedSeries): LoadedStation {
  const celsius = series.quantity === 'temperature';
  return {
    station: series.station,
    quantity: series.quantity,
    readings: series.readings,
    first: isoInstant(series.first),
    last: isoInstant(series.last),
    min_c: celsius ? series.min : null,
    max_c: celsius ? series.max : null,
  };
}

export function loadsAnswer(rows: readonly LoadRow[]): LoadsAnswer {
  return {
    loads: rows.map(({ load, file, stations, readings, at, withdrawn, battery }) => ({
      load,
      file,
      stations,
      readings,
      at: isoInstant(at),
      withdrawn: withdrawn === null ? null : isoInstant(withdrawn),
      battery: battery.map(batteryAnswer),
    })),
  };
}
