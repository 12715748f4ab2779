import type {
  BoxForecast,
  Forecast,
  Interval,
  LotForecast,
  OldRuleAnswer,
  StageWindow,
} from '../../forecasting/forecast.js';
import type { DayTime } from '../../forecasting/units.js';
import { isoDay, type Language, say, words } from '../words/index.js';
import type * as Answer from './answers.js';

/** The forecast as other programs get it: ISO local dates, sentences in one language, figures rounded to what they can bear. */
export function forecastAnswer(forecast: Forecast, language: Language): Answer.ForecastAnswer {
  return {
    asOf: isoDay(forecast.asOf),
    cautions: cautions(language),
    boxes: forecast.boxes.map((box) => boxAnswer(box, language)),
  };
}

/** What stands beside every date and limit. */
export function cautions(language: Language): string[] {
  return [
    words(language, 'caution-estimate', {}),
    words(language, 'caution-ice', {}),
    words(language, 'caution-decide', {}),
  ];
}

function boxAnswer(box: BoxForecast, language: Language): Answer.BoxAnswer {
  const sentences = (remarks: BoxForecast['assumptions']) => remarks.map((remark) => say(language, remark));
  return {
    box: box.box,
    site: box.site,
    eggs: box.eggs,
    lots: box.lots.map((lot) => lotAnswer(lot, language)),
    dataThrough: box.dataThrough === null ? null : isoDay(box.dataThrough),
    days: box.days,
    windows: box.windows.map((window) => windowAnswer(window, language)),
    oldRule: oldRuleAnswer(box.oldRule, language),
    method: sentences(box.method).join(' '),
    assumptions: sentences(box.assumptions),
    sharpenBy: sentences(box.sharpenBy),
  };
}

function lotAnswer(lot: LotForecast, language: Language): Answer.LotAnswer {
  return {
    lot: lot.lot,
    eggs: lot.eggs,
    stage: lot.stage,
    progress: Object.fromEntries(Object.entries(lot.progress).map(([stage, x]) => [stage, rounded(x, 4)])),
    thermalUnits: lot.thermalUnits === null ? null : rounded(lot.thermalUnits, 1),
    windows: lot.windows.map((window) => windowAnswer(window, language)),
    oldRule: oldRuleAnswer(lot.oldRule, language),
  };
}

function windowAnswer(window: StageWindow, language: Language): Answer.WindowAnswer {
  return {
    stage: window.stage,
    first: intervalAnswer(window.first),
    median: intervalAnswer(window.median),
    last: intervalAnswer(window.last),
    passed: window.passed,
    unreached: window.unreached === null ? null : say(language, window.unreached),
    outsideValidity: window.outsideValidity,
  };
}

function intervalAnswer(interval: Interval): Answer.IntervalAnswer {
  return { p10: date(interval.p10), p50: date(interval.p50), p90: date(interval.p90) };
}

function oldRuleAnswer(rule: OldRuleAnswer, language: Language): Answer.OldRuleAnswer {
  return {
    thermalUnits: rounded(rule.thermalUnits, 1),
    hatch: date(rule.hatch),
    why: say(language, rule.why),
  };
}

function date(moment: DayTime | null): string | null {
  return moment === null ? null : isoDay(moment);
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
