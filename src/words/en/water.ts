import type { WaterWords } from '../../../forecasting/water.js';
import { decimal, whole } from '../format.js';

const days = (count: number) => (count === 1 ? '1 day' : `${whole('en', count)} days`);
const winters = (count: number) => (count === 1 ? '1 past winter' : `${whole('en', count)} past winters`);
const degrees = (celsius: number) => `${decimal('en', celsius, 1)} °C`;

/** What the water of a forecast rests on, in English. */
export const water: { [K in keyof WaterWords]: (w: WaterWords[K]) => string } = {
  'own-history': ({ winters: count }) =>
    count === 0
      ? 'Days to come follow what is usual at this station; it has no whole past winter yet, so expect wide windows.'
      : `Days to come follow ${winters(count)} of this station, starting from today’s departure from normal.`,
  'neighbour-history': ({ winters: count, stations }) =>
    `Days to come follow ${winters(count)} of ${stations}, translated to this station’s water.`,
  'stated-curve': () =>
    'Days to come follow the seasonal curve of the season file: no past winter is known here, so expect wide windows.',
  'no-water': ({ station }) =>
    `Nothing can be said of the days to come at ${station}: it needs a past winter, a station that reports, or a seasonal curve in the season file.`,
  'history-not-shared': ({ station, other, shared, least }) =>
    `${other} has a longer record, but ${shared === 0 ? 'no day' : `only ${days(shared)}`} in common with ${station}; it takes ${days(least)} to learn how one follows the other. Load what ${other} has read while ${station} did.`,
  'filled-from': ({ stations, days: count, error }) =>
    `${days(count)} without readings were filled from ${stations}, give or take ${degrees(error)} a day.`,
  'same-logger': ({ station, as }) =>
    `${as} says the same as ${station} to a few hundredths of a degree. If it is the same logger under another name, remove one of them: together they look surer than they are.`,
  'neighbour-doubted': ({ station, days: count }) =>
    `${station} was not believed on ${days(count)} of this season: it strayed far from the other stations. Check its logger, its unit and its clock.`,
  'as-it-stands': ({ stations, error }) =>
    `This station has no day in common with any other, so its water is taken to be that of ${stations}, give or take ${degrees(error)}. A few weeks of its own readings would settle how they differ.`,
  'this-season-only': ({ stations }) =>
    `How this station follows ${stations} was learnt from this season alone; last winters’ readings would make it surer.`,
  'sightings-used': ({ count }) =>
    count === 1
      ? 'One visit (a hand reading or ice seen) was used as evidence of the water.'
      : `${whole('en', count)} sightings from visits (hand readings, ice) were used as evidence of the water.`,
  'ice-doubted': ({ station }) =>
    `Ice was reported at ${station}, but its record shows water that does not freeze: the sighting was left aside. Check which station was meant.`,
};
