import type { z } from 'zod';
import { choice, figure, listOf, maybe, otherwise, text, thing, zoneName } from './fields.js';

/** Who keeps this season: one data folder is one group. */
export const groupSchema = thing({
  name: text,
  language: otherwise(choice('en', 'fr'), 'en'),
  /** Moments in the file without an offset are read in this zone. */
  zone: zoneName,
  note: maybe(text),
});
export type Group = z.infer<typeof groupSchema>;

/** The group's fixed rule, shown beside the windows: hatch at so many degree-days above a base, °C·day and °C. */
export const oldRuleSchema = thing({
  thermalUnits: otherwise(figure(1, 5000), 500),
  base: otherwise(figure(-5, 15), 0),
});
export type OldRule = z.infer<typeof oldRuleSchema>;

/** Monthly water normals, °C on the 15th of January to December: the last resort where nothing was recorded. */
export const seasonalCurveSchema = thing({
  monthly: listOf(figure(-2, 35)).check((ctx) => {
    if (ctx.value.length !== 12)
      ctx.issues.push({
        code: 'custom',
        input: ctx.value,
        params: { trouble: { code: 'season.twelve-months', with: { given: ctx.value.length } } },
      });
  }),
  /** One standard deviation of a winter's departure from it, °C. */
  spread: otherwise(figure(0.1, 10), 1),
  note: maybe(text),
});
export type SeasonalCurve = z.infer<typeof seasonalCurveSchema>;
