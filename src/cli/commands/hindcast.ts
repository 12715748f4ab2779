import { readFile, stat } from 'node:fs/promises';
import { gunzipSync } from 'node:zlib';
import { Command, Option } from 'commander';
import type { HindcastCase } from '../../../forecasting/hindcast/index.js';
import { type DevelopmentTable, type StationDays, shippedTables } from '../../../forecasting/index.js';
import { UnknownName } from '../../group/unknown-name.js';
import { CASES, dailyFile, groupStations, hindcastOptions, runHindcast } from '../../hindcast/index.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { hindcastText } from '../hindcast-text.js';
import { hindcastBar } from '../progress.js';
import { CommandRefused } from '../refused.js';
import { withGroup } from '../with-group.js';

interface Given {
  readonly case: readonly (HindcastCase | 'gaps')[];
  readonly fertilised?: string;
  readonly lead: readonly string[];
  readonly gap: readonly string[];
  readonly table: string;
  readonly stage?: string;
  readonly visits?: boolean;
  readonly rows?: boolean;
}

export function hindcastCommand({ word, face }: CommandContext): Command {
  const more = (value: string, before: readonly string[]) => [...before, value];
  const example = 'underice hindcast daily-means.csv --case under-ice --lead 12-15';
  const cases = new Option('--case <case>', word('cli-hindcast-case', {})).choices([...CASES]);
  return new Command('hindcast')
    .description(word('cli-hindcast', {}))
    .argument('[file]', word('cli-hindcast-file', {}))
    .addOption(cases.default([]).argParser(oneOfCases))
    .option('--fertilised <MM-DD>', word('cli-hindcast-fertilised', {}))
    .option('--lead <MM-DD>', word('cli-hindcast-lead', {}), more, [])
    .option('--gap <days>', word('cli-hindcast-gap', {}), more, [])
    .option('--table <table>', word('cli-hindcast-table', {}), 'atlantic-salmon')
    .option('--stage <stage>', word('cli-hindcast-stage', {}))
    .option('--visits', word('cli-hindcast-visits', {}))
    .option('--rows', word('cli-hindcast-rows', {}))
    .addHelpText('after', `\n${word('cli-example', { command: example })}`)
    .action(async (file: string | undefined, given: Given) => {
      const here = face();
      const { stations, tables } = await asked(here, file);
      const options = hindcastOptions(
        {
          cases: given.case,
          fertilised: given.fertilised ?? null,
          leads: given.lead,
          gaps: given.gap,
          stage: given.stage ?? null,
          visits: given.visits === true,
        },
        tableNamed(given.table, tables),
      );
      const bar = hindcastBar(here);
      const report = await runHindcast(stations, options, bar.step).finally(bar.stop);
      const shown = given.rows === true ? report : { ...report, rows: [] };
      answer(here, shown, () => hindcastText(report, here));
    });
}

function oneOfCases(value: string, before: readonly string[]): string[] {
  if (!CASES.some((known) => known === value)) {
    throw new CommandRefused({
      code: 'cli-bad-value',
      with: { option: '--case', value, allowed: CASES.join(', ') },
    });
  }
  return [...before, value];
}

/** The stations of a file, else the group's own, and the tables that may be named. */
async function asked(
  here: Face,
  file: string | undefined,
): Promise<{ stations: StationDays[]; tables: readonly DevelopmentTable[] }> {
  if (file !== undefined) return { stations: dailyFile(await textOf(file)), tables: shippedTables };
  return withGroup(here, async (group) => ({
    stations: await groupStations(group),
    tables: await group.tables(),
  }));
}

/** A file of daily means is a few megabytes; what is larger than this is some other file (bytes). */
const LARGEST = 256 * 1024 * 1024;

async function textOf(file: string): Promise<string> {
  const refused = () => new CommandRefused({ code: 'cli-file-unreadable', with: { file } });
  const found = await stat(file).catch(() => null);
  if (found === null || !found.isFile() || found.size > LARGEST) throw refused();
  const bytes = await readFile(file).catch(() => {
    throw refused();
  });
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes.toString('utf8');
  try {
    return gunzipSync(bytes, { maxOutputLength: LARGEST }).toString('utf8');
  } catch {
    throw refused();
  }
}

function tableNamed(id: string, tables: readonly DevelopmentTable[]): DevelopmentTable {
  const table = tables.find((one) => one.id === id);
  if (table !== undefined) return table;
  throw new UnknownName({ code: 'unknown-table', with: { table: id, tables: tables.map((one) => one.id) } });
}
