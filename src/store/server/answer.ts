import { z } from 'zod';

/** One series of an answer: its tags and its rows. */
export interface AnswerSeries {
  readonly tags: Readonly<Record<string, string>>;
  readonly columns: readonly string[];
  readonly values: readonly (readonly unknown[])[];
}

/** The server understood the statement and says why it did not do it; the status was 200 all the same. */
export class StatementFailed extends Error {}
/** The answer broke off, or was none. */
export class AnswerBroken extends Error {}

const seriesSchema = z.object({
  tags: z.record(z.string(), z.string()).optional(),
  columns: z.array(z.string()),
  values: z.array(z.array(z.unknown())).optional(),
  partial: z.boolean().optional(),
});
const answerSchema = z.object({
  error: z.string().optional(),
  results: z
    .array(
      z.object({
        error: z.string().optional(),
        series: z.array(z.looseObject({ columns: z.array(z.string()) })).optional(),
        partial: z.boolean().optional(),
      }),
    )
    .optional(),
});

/**
 * Reads an answer that came in pieces, one JSON document a line. Pieces of one series follow each other, all but the
 * last marked partial: an answer that ends with a marked one was cut (by the connection, or by a limit of the server).
 */
export function parsedAnswer(text: string): readonly AnswerSeries[] {
  const lines = text.split('\n').filter((line) => line !== '');
  if (lines.length === 0) throw new AnswerBroken('an empty answer');
  const whole: AnswerSeries[] = [];
  let open: { tags: Record<string, string>; columns: readonly string[]; values: unknown[][] } | null = null;
  let more = false;
  for (const line of lines) {
    const answer = documentOf(line);
    if (answer.error !== undefined) throw new StatementFailed(answer.error);
    for (const result of answer.results ?? []) {
      if (result.error !== undefined) throw new StatementFailed(result.error);
      more = result.partial === true;
      for (const piece of result.series ?? []) {
        const { tags = {}, columns, values = [], partial = false } = seriesOf(piece);
        if (open === null) open = { tags, columns, values: [] };
        for (const row of values) open.values.push(row);
        if (partial) continue;
        whole.push(open);
        open = null;
      }
    }
  }
  if (open !== null || more) throw new AnswerBroken('the answer broke off');
  return whole;
}

function documentOf(line: string): z.infer<typeof answerSchema> {
  let document: unknown;
  try {
    document = JSON.parse(line);
  } catch (error) {
    throw new AnswerBroken('the answer broke off', { cause: error });
  }
  const read = answerSchema.safeParse(document);
  if (read.success) return read.data;
  throw new AnswerBroken('the answer is none of InfluxDB');
}

/** Rows are checked where they are used: a check of every cell here would cost more than reading them. */
function seriesOf(piece: unknown): z.infer<typeof seriesSchema> {
  if (typeof piece === 'object' && piece !== null && 'values' in piece && Array.isArray(piece.values)) {
    const { values, ...rest } = piece;
    return { ...seriesSchema.parse(rest), values };
  }
  return seriesSchema.parse(piece);
}
