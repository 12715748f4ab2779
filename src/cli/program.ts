import { readFileSync } from 'node:fs';
import { Command, Option } from 'commander';
import { type Language, languages, words } from '../words/index.js';
import { accountCommand } from './commands/account.js';
import { backupCommand } from './commands/backup.js';
import { checksCommand } from './commands/checks.js';
import { copyStoreCommand } from './commands/copy-store.js';
import { demoCommand } from './commands/demo.js';
import { earlierCommand } from './commands/earlier.js';
import { exportAllCommand } from './commands/export.js';
import { fieldCommand } from './commands/field.js';
import { forecastCommand } from './commands/forecast.js';
import { hindcastCommand } from './commands/hindcast.js';
import { layoutsCommand } from './commands/layouts.js';
import { liftingCommand } from './commands/lifting.js';
import { loadCommand } from './commands/load.js';
import { loadsCommand } from './commands/loads.js';
import { recordCommand } from './commands/record.js';
import { reportCommand } from './commands/report.js';
import { restoreCommand } from './commands/restore.js';
import { seasonCommand } from './commands/season.js';
import { serveCommand } from './commands/serve.js';
import { settingsCommand } from './commands/settings.js';
import { sitesCommand } from './commands/sites.js';
import { spellsCommand } from './commands/spells.js';
import { survivalCommand } from './commands/survival.js';
import { tablesCommand } from './commands/tables.js';
import { tallyCommand } from './commands/tally.js';
import { verifyCommand } from './commands/verify.js';
import { withdrawCommand } from './commands/withdraw.js';
import type { CommandContext, Face, Stream } from './face.js';
import { CommandRefused } from './refused.js';
import { paragraph } from './terminal-table.js';

/** What a run of the command line stands in. */
export interface Setting {
  readonly language: Language;
  readonly env: NodeJS.ProcessEnv;
  readonly out: Stream;
  readonly err: Stream;
  /** Sets the exit status of a run that ends without an error. */
  readonly end: (status: number) => void;
}

const commands = [
  demoCommand,
  serveCommand,
  seasonCommand,
  loadCommand,
  loadsCommand,
  layoutsCommand,
  withdrawCommand,
  checksCommand,
  forecastCommand,
  spellsCommand,
  liftingCommand,
  tallyCommand,
  survivalCommand,
  reportCommand,
  fieldCommand,
  sitesCommand,
  earlierCommand,
  hindcastCommand,
  recordCommand,
  tablesCommand,
  settingsCommand,
  accountCommand,
  backupCommand,
  restoreCommand,
  verifyCommand,
  exportAllCommand,
  copyStoreCommand,
];

/** The whole command line, its help in the person's language. */
export function buildProgram(setting: Setting): Command {
  const { language } = setting;
  const context: CommandContext = {
    face: (several) => face(program, setting, several === true),
    end: setting.end,
    word: (code, figures) => words(language, code, figures),
  };
  const program = dress(new Command('underice'), setting)
    .description(context.word('cli-about', {}))
    .version(version(), '--version', context.word('cli-version', {}));
  shared(program, context);
  program.addHelpText('after', `\n${context.word('cli-example', { command: 'underice demo --exit' })}`);
  for (const make of commands) program.addCommand(dress(make(context), setting));
  return program;
}

/** The three options every command takes, before or after its name. */
function shared(command: Command, context: CommandContext): void {
  command
    .addOption(
      new Option('--data <folder>', context.word('cli-option-data', {})).argParser(
        (folder, before: readonly string[] = []) => [...before, folder],
      ),
    )
    .addOption(new Option('--lang <language>', context.word('cli-option-lang', {})).choices([...languages]))
    .addOption(new Option('--json', context.word('cli-option-json', {})));
}

function dress(command: Command, setting: Setting): Command {
  const { language, out, err } = setting;
  const title = {
    'Usage:': 'cli-usage',
    'Arguments:': 'cli-arguments',
    'Options:': 'cli-options',
    'Commands:': 'cli-commands',
    'Global Options:': 'cli-global-options',
  } as const;
  const isTitle = (text: string): text is keyof typeof title => text in title;
  command
    .exitOverride()
    .helpCommand(false)
    .helpOption('-h, --help', words(language, 'cli-help', {}))
    .configureOutput({
      writeOut: (text) => out.write(text),
      writeErr: (text) => err.write(text),
      // The sentence about a refused command line is ours (run.ts), not the parser's.
      outputError: () => undefined,
    })
    .configureHelp({
      showGlobalOptions: true,
      styleTitle: (text) => (isTitle(text) ? words(language, title[text], {}) : text),
      optionDescription: (option) => option.description,
      // The parser's own breaks lines at no-break spaces as well.
      boxWrap: (text, width) =>
        text
          .split('\n')
          .map((line) => paragraph(line, width))
          .join('\n'),
    });
  for (const child of command.commands) dress(child, setting);
  return command;
}

function face(program: Command, setting: Setting, several: boolean): Face {
  const options = program.opts<{ data?: readonly string[]; json?: boolean }>();
  const [first = null, ...others] = options.data ?? [];
  if (others.length > 0 && !several) throw new CommandRefused({ code: 'cli-one-folder', with: {} });
  return {
    language: setting.language,
    json: options.json === true,
    dataFolder: first ?? setting.env.UNDERICE_DATA ?? null,
    dataOption: first,
    otherFolders: others,
    out: setting.out,
    err: setting.err,
    interactive: setting.out.isTTY === true && setting.err.isTTY === true,
    columns: setting.out.columns ?? 100,
  };
}

function version(): string {
  const manifest: unknown = JSON.parse(
    readFileSync(
      new URL(
        import.meta.url.includes('/dist/') ? '../../../package.json' : '../../package.json',
        import.meta.url,
      ),
      'utf8',
    ),
  );
  return typeof manifest === 'object' && manifest && 'version' in manifest ? String(manifest.version) : '';
}
