import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Command, Option } from 'commander';
import { type MapWay, mapWays, ReportRefused, reportFiles, seasonReport } from '../../reports/index.js';
import { madeFolder } from '../../store/index.js';
import { answer, type CommandContext } from '../face.js';
import { withGroup } from '../with-group.js';

/** The season's report as files: HTML to print, CSV, and what stands in them. */
export function reportCommand({ word, face }: CommandContext): Command {
  return new Command('report')
    .description(word('cli-report', {}))
    .option('--season <season>', word('cli-report-season', {}))
    .requiredOption('--out <folder>', word('cli-report-out', {}))
    .addOption(new Option('--map <how>', word('cli-report-map', {})).choices([...mapWays]).default('none'))
    .addHelpText(
      'after',
      `\n${word('cli-example', { command: 'underice report --season 2024-2025 --lang fr --out report' })}`,
    )
    .action(async ({ season, out, map }: { season?: string; out: string; map: MapWay }) => {
      const here = face();
      const made = await withGroup(here, async (group) => {
        const reported = await seasonReport(group, season ?? null);
        return { reported, files: reportFiles(reported.documents, here.language, await group.today(), map) };
      });
      try {
        madeFolder(out);
      } catch {
        refuse(out);
      }
      for (const [name, text] of Object.entries(made.files))
        await writeFile(join(out, name), text).catch(() => refuse(join(out, name)));
      const files = Object.keys(made.files);
      const { reported } = made;
      answer(here, { season: reported.season, closed: reported.closed !== null, folder: out, files }, () =>
        word('cli-report-written', { folder: out, files }),
      );
    });
}

function refuse(file: string): never {
  throw new ReportRefused({ code: 'report-unwritable', with: { file } });
}
