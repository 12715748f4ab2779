/** A box is taken out about mid-day where nobody says when. */
const MIDDAY = '12:00';

type Document = Readonly<Record<string, unknown>>;

/** The season document with a box lifted at a moment ("2026-06-05", "2026-06-05 14:30"), where it was not before. */
export function withLifted<Season extends Document>(document: Season, box: string, when: string): Season {
  const day = when.slice(0, 10);
  const moment = when.length > 10 ? when : `${day} ${MIDDAY}`;
  const stated: unknown[] = Array.isArray(document.boxes) ? document.boxes : [];
  const is = (one: unknown): one is Document => typeof one === 'object' && one !== null;
  const boxes = stated.map((one) =>
    is(one) && String(one.id).toLowerCase() === box.toLowerCase() && one.lifted === undefined
      ? { ...one, lifted: moment }
      : one,
  );
  return { ...document, boxes };
}
