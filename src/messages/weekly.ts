import type { Forecast } from '../../forecasting/forecast.js';
import type { LiftingPlan } from '../../forecasting/index.js';
import { speech } from '../pages/speech.js';
import type { Language } from '../words/index.js';

/** Most boxes a summary names one by one. */
const MOST_BOXES = 40;

/** The week in sentences: every box, where its eggs are and what comes next; the water; the lifting. */
export function weekOf(language: Language, forecast: Forecast, plan: LiftingPlan | null): readonly string[] {
  const { say, stage } = speech(language);
  const rows = forecast.boxes.slice(0, MOST_BOXES).map(({ box, lots, windows }) => {
    const now = [...new Set(lots.map((lot) => lot.stage))].filter(
      (one) => one !== 'unknown' && one !== 'not-fertilised',
    );
    const next = windows.find(
      ({ passed, first, last }) => !passed && first.p50 !== null && last.p50 !== null,
    );
    const from = next?.first.p50 ?? null;
    const to = next?.last.p50 ?? null;
    const window =
      next === undefined || from === null || to === null
        ? ''
        : say('letter-weekly-window', {
            stage: stage(next.stage),
            from: Math.floor(from),
            to: Math.floor(to),
          });
    return say('letter-weekly-box', { box, stage: now.map(stage).join(', ') || '–', windows: window });
  });
  const more = forecast.boxes.length - MOST_BOXES;
  const known = forecast.boxes.flatMap(({ box, dataThrough }) =>
    dataThrough === null ? [] : [{ box, day: dataThrough }],
  );
  const oldest = known.reduce<(typeof known)[number] | null>(
    (found, one) => (found === null || one.day < found.day ? one : found),
    null,
  );
  const first = plan?.recommended[0];
  return [
    ...rows,
    ...(more > 0 ? [say('letter-further', { things: more })] : []),
    ...(oldest === null ? [] : [say('letter-weekly-water', oldest)]),
    ...(first === undefined || plan === null
      ? []
      : [
          say('letter-weekly-lifting', {
            day: first.day,
            boxes: plan.recommended.flatMap(({ boxes }) => boxes).length,
          }),
        ]),
  ];
}
