import type { BoxForecast } from '../../../forecasting/forecast.js';
import type { Season } from '../../season/index.js';
import { say } from '../../words/index.js';
import { byStationNames } from '../parts/station-names.js';
import type { View } from '../view.js';

/** What would sharpen the season, each thing once with the boxes it serves, what serves most first. */
export interface Sharpening {
  readonly sentence: string;
  readonly boxes: readonly string[];
}

export function sharpenings(boxes: readonly BoxForecast[], season: Season, { language }: View): Sharpening[] {
  const served = new Map<string, string[]>();
  for (const { box, sharpenBy } of boxes) {
    for (const remark of byStationNames(sharpenBy, season)) {
      const sentence = say(language, remark);
      served.set(sentence, [...(served.get(sentence) ?? []), box]);
    }
  }
  return [...served]
    .map(([sentence, boxes]) => ({ sentence, boxes }))
    .sort((a, b) => b.boxes.length - a.boxes.length);
}
