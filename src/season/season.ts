import { z } from 'zod';
import { boxSchema, spreadPlanted } from './boxes.js';
import { putBackSchema, tallySchema } from './counts.js';
import { earlierSchema } from './earlier.js';
import { fieldEntrySchema } from './field-entries.js';
import { listOf, maybe, thing } from './fields.js';
import { groupSchema, oldRuleSchema, seasonalCurveSchema } from './group.js';
import { layoutSchema } from './layouts.js';
import { liftingSchema } from './lifting.js';
import { deploymentSchema, loggerSchema } from './loggers.js';
import { broodstockSchema, crossSchema, lotSchema } from './lots.js';
import { permitSchema } from './permits.js';
import { rulingSchema } from './rulings.js';
import { siteSchema } from './sites.js';
import { stationSchema } from './stations.js';
import { tableSchema } from './tables.js';
import { blockedSchema, observedSchema, visitSchema } from './visits.js';

/**
 * Everything a group states about its season; `zone` is the group's, in which moments without an offset are read.
 * Plain values only: it can be kept and sent as JSON. Absent things are null or empty, never undefined.
 */
const schemaIn = (zone: string) =>
  thing({
    group: groupSchema,
    stations: listOf(stationSchema(zone)),
    loggers: listOf(loggerSchema),
    deployments: listOf(deploymentSchema(zone)),
    sites: listOf(siteSchema),
    broodstock: listOf(broodstockSchema(zone)),
    crosses: listOf(crossSchema(zone)),
    lots: listOf(lotSchema(zone)),
    boxes: listOf(z.preprocess(spreadPlanted, boxSchema(zone))),
    visits: listOf(visitSchema(zone)),
    observed: listOf(observedSchema),
    blocked: listOf(blockedSchema),
    checkedAndPutBack: listOf(putBackSchema(zone)),
    tallies: listOf(tallySchema(zone)),
    lifting: maybe(liftingSchema(zone)),
    permits: listOf(permitSchema),
    entries: listOf(fieldEntrySchema(zone)),
    rulings: listOf(rulingSchema(zone)),
    earlier: listOf(earlierSchema),
    seasonalCurve: maybe(seasonalCurveSchema),
    oldRule: z.preprocess((given) => given ?? {}, oldRuleSchema),
    tables: listOf(tableSchema),
    layouts: listOf(layoutSchema),
  });
export type Season = z.infer<ReturnType<typeof schemaIn>>;

/** Building the schema costs more than reading a small file: one for each zone met, of the six hundred there are. */
const schemas = new Map<string, ReturnType<typeof schemaIn>>();

/** What a season file must look like; `zone` is the group's, known to exist. */
export function seasonSchema(zone: string): ReturnType<typeof schemaIn> {
  const made = schemas.get(zone) ?? schemaIn(zone);
  schemas.set(zone, made);
  return made;
}
