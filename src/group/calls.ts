import { z } from 'zod';

const day = z.number().int().nullable();
const instant = z.number().nullable();

/** A file of a load that goes through the service: sent beforehand, or not there to be sent. */
export const fileSent = z.object({
  sent: z.string().nullable(),
  /** Why it was not: there is none of that name, or it is a folder. */
  instead: z.enum(['nothing', 'folder']).nullable(),
  name: z.string(),
  station: z.string().optional(),
});

/**
 * What a command asks of the service that owns its data folder, each with what it says. Answers travel as the values
 * they are (v8 serialisation): whichever way a command goes, it has the same value to print.
 */
export const calls = {
  today: z.object({}),
  season: z.object({}),
  seasonText: z.object({}),
  previewSeason: z.object({ text: z.string(), file: z.string() }),
  applySeason: z.object({
    text: z.string(),
    file: z.string(),
    who: z.string(),
    expected: z.number().int().optional(),
  }),
  seasonVersions: z.object({}),
  seasonAt: z.object({ version: z.number() }),
  closedSeasons: z.object({}),
  closedContent: z.object({ season: z.string() }),
  keepClosed: z.object({
    closed: z.object({
      season: z.string(),
      version: z.number().int(),
      method: z.number().int(),
      content: z.string(),
    }),
    who: z.string(),
  }),
  stations: z.object({}),
  findings: z.object({ station: z.string() }),
  load: z.object({
    files: z.array(fileSent),
    asked: z.object({
      station: z.string().optional(),
      zone: z.string().optional(),
      unit: z.enum(['C', 'F', 'K']).optional(),
      column: z.string().optional(),
      dateOrder: z.enum(['ymd', 'dmy', 'mdy']).optional(),
    }),
    createStations: z.boolean(),
    dryRun: z.boolean(),
    who: z.string(),
  }),
  loads: z.object({}),
  withdraw: z.object({ load: z.string(), who: z.string() }),
  forecast: z.object({ box: z.string().nullable(), asOf: day, closed: z.string().optional() }),
  series: z.object({
    station: z.string(),
    quantity: z.enum(['temperature', 'level', 'discharge']),
    from: instant,
    to: instant,
    points: z.number(),
  }),
  days: z.object({ station: z.string(), from: day, to: day }),
  tables: z.object({}),
  spells: z.object({ box: z.string().nullable(), since: instant }),
  spellEvents: z.object({ after: z.number() }),
  acknowledgeSpell: z.object({ id: z.string(), note: z.string(), who: z.string() }),
  settleExposure: z.object({
    id: z.string(),
    how: z.enum(['happened', 'did-not-happen']),
    note: z.string(),
    who: z.string(),
  }),
  verify: z.object({}),
  copyStore: z.object({ to: z.enum(['embedded', 'influx']) }),
} as const;
export type CallName = keyof typeof calls;
export type CallArguments<Name extends CallName> = z.infer<(typeof calls)[Name]>;

/** A record is asked for on its own: it comes line by line. */
export const recordCall = z.object({ station: z.string(), from: day, to: day, daily: z.boolean() });
