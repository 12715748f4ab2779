import { z } from '@hono/zod-openapi';

const day = z.iso.date().openapi({ description: 'Local date', example: '2026-05-18' });
const instant = z.string().openapi({ description: 'Instant, ISO 8601 UTC', example: '2026-02-15T12:00:00Z' });
const list = <Item extends z.ZodType>(item: Item) => z.array(item).readonly();

export const problemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string().openapi({ description: 'What is wrong and what would do, in the language asked for' }),
    code: z.string().openapi({ description: 'The same in every language' }),
    problems: list(
      z.object({ line: z.number().nullable(), path: z.string(), code: z.string() }).readonly(),
    ).optional(),
  })
  .openapi('Problem', { description: 'Problem details, RFC 9457' });

const interval = z
  .object({ p10: day.nullable(), p50: day.nullable(), p90: day.nullable() })
  .readonly()
  .openapi('Interval', { description: 'A date with its 80% interval; null where the stage is not reached' });

const stageWindow = z
  .object({
    stage: z.string(),
    first: interval,
    median: interval,
    last: interval,
    passed: z.boolean(),
    unreached: z.string().nullable(),
    outsideValidity: z.boolean(),
  })
  .readonly()
  .openapi('Window', { description: 'First (5%), median and last (95%) egg at a stage' });

const oldRule = z
  .object({ thermalUnits: z.number(), hatch: day.nullable(), why: z.string() })
  .readonly()
  .openapi('OldRule');

const lot = z
  .object({
    lot: z.string(),
    eggs: z.number(),
    stage: z.string(),
    progress: z.record(z.string(), z.number()).readonly(),
    thermalUnits: z.number().nullable(),
    windows: list(stageWindow),
    oldRule,
  })
  .readonly()
  .openapi('LotForecast');

export const boxForecastSchema = z
  .object({
    box: z.string(),
    site: z.string(),
    eggs: z.number(),
    lots: list(lot),
    dataThrough: day.nullable(),
    days: z.object({ measured: z.number(), filled: z.number(), projected: z.number() }).readonly(),
    windows: list(stageWindow),
    oldRule,
    method: z.string(),
    assumptions: list(z.string()),
    sharpenBy: list(z.string()),
  })
  .readonly()
  .openapi('BoxForecast');

export const forecastSchema = z
  .object({ asOf: day, cautions: list(z.string()), boxes: list(boxForecastSchema) })
  .readonly()
  .openapi('Forecast');

const loadedStation = z
  .object({
    station: z.string(),
    quantity: z.string(),
    readings: z.number(),
    first: instant,
    last: instant,
    min_c: z.number().nullable(),
    max_c: z.number().nullable(),
  })
  .readonly();

const understood = z
  .object({
    encoding: z.string(),
    delimiter: z.string().nullable(),
    decimal: z.string(),
    unit: z.string().nullable(),
    zone: z.string().nullable(),
    dateOrder: z.string().nullable(),
    timeColumns: list(z.string()),
    valueColumn: z.string().nullable(),
    daily: z.boolean(),
  })
  .readonly();

const batteryFigure = z.object({ value: z.number(), at: instant }).readonly();

const battery = z
  .object({
    station: z.string(),
    column: z.string().nullable(),
    unit: z.enum(['V', '%']).nullable(),
    highest: batteryFigure.nullable(),
    lowest: batteryFigure.nullable(),
    last: batteryFigure.nullable(),
    low: z.object({ text: z.string(), at: instant }).readonly().nullable(),
  })
  .readonly()
  .openapi('Battery', { description: "What a file says of the battery of a station's logger, in V or %" });

export const fileAnswerSchema = z
  .object({
    file: z.string(),
    stations: list(loadedStation),
    understood: understood.nullable(),
    assumed: list(z.string()),
    unusable: z
      .object({
        count: z.number(),
        examples: list(z.object({ line: z.number(), reason: z.string() }).readonly()),
      })
      .readonly(),
    battery: list(battery),
    load: z.string().nullable(),
    alreadyLoaded: z.boolean(),
    differing: z.number(),
    largestDifference: z.number().nullable(),
    refused: z.object({ reason: z.string(), question: z.string().nullable() }).readonly().nullable(),
  })
  .readonly()
  .openapi('FileOutcome', { description: 'What was understood of a file, and what came of it' });

/** A stretch of a record as columns of one length. */
export const seriesSchema = z
  .object({
    station: z.string(),
    quantity: z.string(),
    from: instant,
    to: instant,
    step_seconds: z
      .number()
      .openapi({ description: '0: single readings; else min, mean and max of so long' }),
    time: list(z.number()).openapi({ description: 'Epoch milliseconds' }),
    min: list(z.number()),
    mean: list(z.number()),
    max: list(z.number()),
    flag: list(z.number()).openapi({
      description: 'Worst QARTOD flag: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing',
    }),
  })
  .readonly()
  .openapi('Series');

export const loadAnswerSchema = z
  .object({
    files: list(fileAnswerSchema),
    previews: list(z.object({ file: z.string(), series: seriesSchema }).readonly()).optional(),
  })
  .readonly()
  .openapi('LoadAnswer');

export const loadRowSchema = z
  .object({
    load: z.string(),
    file: z.string(),
    stations: list(z.string()),
    readings: z.number(),
    at: instant,
    withdrawn: instant.nullable(),
    battery: list(battery),
  })
  .readonly()
  .openapi('Load');

export const spooledSchema = z
  .object({ file: z.string(), name: z.string(), bytes: z.number(), at: instant, by: z.string() })
  .readonly()
  .openapi('WaitingFile', { description: 'A file received and not yet accepted' });

export const stationSchema = z
  .object({
    station: z.string(),
    name: z.string(),
    kind: z.string(),
    inSeason: z.boolean(),
    records: list(
      z.object({ quantity: z.string(), readings: z.number(), first: instant, last: instant }).readonly(),
    ),
  })
  .readonly()
  .openapi('Station');

export const daysSchema = z
  .object({
    station: z.string(),
    date: list(day),
    mean_c: list(z.number().nullable()),
    min_c: list(z.number().nullable()),
    max_c: list(z.number().nullable()),
    coverage: list(z.number()),
    origin: list(z.string()).openapi({
      description: 'measured, filled, projected, or empty where nothing is known',
    }),
    spread_c: list(z.number().nullable()),
  })
  .readonly()
  .openapi('Days');

export const boxSchema = z
  .object({
    box: z.string(),
    site: z.string(),
    eggs: z.number(),
    lots: list(z.string()),
    stations: list(z.string()),
    lifted: instant.nullable(),
  })
  .readonly()
  .openapi('Box');

export const seasonAppliedSchema = z
  .object({ applied: z.boolean(), changes: list(z.string()), version: z.number() })
  .readonly()
  .openapi('SeasonChanges');

export const versionSchema = z
  .object({ version: z.number(), by: z.string(), at: instant })
  .readonly()
  .openapi('SeasonVersion');

/** A season or a table in the shape of the season file's; README, "The season file", says what it holds. */
export const documentSchema = z.record(z.string(), z.unknown()).openapi('Document');
