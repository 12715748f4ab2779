import { createReadStream, createWriteStream } from 'node:fs';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { FileOutcome } from '../loading/index.js';
import type { Season, SeasonChange } from '../season/index.js';
import type { Settled, SpellEvent, SpellRow, SpellsRequest } from '../spells/contract.js';
import { placeBackup, refuseTaken } from '../store/backup-file.js';
import { exportCopy } from '../store/copies.js';
import type {
  BackupMade,
  ClosedSeasonRow,
  ExportMade,
  StoreCopied,
  StoreKind,
  Verified,
} from '../store/index.js';
import type { CallArguments } from './calls.js';
import type {
  ClosedGiven,
  FileGiven,
  Group,
  LoadRequest,
  LoadRow,
  RecordRequest,
  SeasonVersionRow,
  StationRow,
} from './group.js';
import type { StationFinding } from './judging/findings.js';
import type { Series, SeriesRequest } from './series.js';
import type { ServiceConnection } from './service-connection.js';

type FileSent = CallArguments<'load'>['files'][number];

/** A group whose data folder a running service owns: the same door, with the same answers. */
export class RemoteGroup implements Group {
  constructor(
    readonly folder: string,
    private readonly service: ServiceConnection,
  ) {}

  today(): Promise<DayNumber> {
    return this.service.call('today', {});
  }

  season(): Promise<Season> {
    return this.service.call('season', {});
  }

  seasonText(): Promise<string> {
    return this.service.call('seasonText', {});
  }

  previewSeason(text: string, file: string): Promise<readonly SeasonChange[]> {
    return this.service.call('previewSeason', { text, file });
  }

  applySeason(text: string, file: string, who: string, expected?: number): Promise<readonly SeasonChange[]> {
    return this.service.call('applySeason', { text, file, who, expected });
  }

  seasonVersions(): Promise<readonly SeasonVersionRow[]> {
    return this.service.call('seasonVersions', {});
  }

  seasonAt(version: number): Promise<string> {
    return this.service.call('seasonAt', { version });
  }

  closedSeasons(): Promise<readonly ClosedSeasonRow[]> {
    return this.service.call('closedSeasons', {});
  }

  closedContent(season: string): Promise<string | null> {
    return this.service.call('closedContent', { season });
  }

  keepClosed(closed: ClosedGiven, who: string): Promise<ClosedSeasonRow> {
    return this.service.call('keepClosed', { closed, who });
  }

  stations(): Promise<readonly StationRow[]> {
    return this.service.call('stations', {});
  }

  findings(station: string): Promise<readonly StationFinding[]> {
    return this.service.call('findings', { station });
  }

  /** Files are sent one after the other, then loaded: the service may not be allowed to open them where they lie. */
  async load(request: LoadRequest): Promise<readonly FileOutcome[]> {
    const { asked, createStations, dryRun, who, progress } = request;
    const files: FileSent[] = [];
    for (const file of request.files) files.push(await this.sent(file, progress));
    return this.service.call('load', { files, asked, createStations, dryRun, who });
  }

  loads(): Promise<readonly LoadRow[]> {
    return this.service.call('loads', {});
  }

  withdraw(load: string, who: string): Promise<LoadRow> {
    return this.service.call('withdraw', { load, who });
  }

  forecast(request: Parameters<Group['forecast']>[0]): Promise<Forecast> {
    return this.service.call('forecast', request);
  }

  async *record(request: RecordRequest): AsyncIterable<string> {
    let rest = '';
    for await (const chunk of this.service.text('/owner/record', request)) {
      const lines = `${rest}${chunk}`.split('\n');
      rest = lines.pop() ?? '';
      yield* lines;
    }
  }

  series(request: SeriesRequest): Promise<Series> {
    return this.service.call('series', request);
  }

  days(request: Omit<RecordRequest, 'daily'>): Promise<DaySeries> {
    return this.service.call('days', request);
  }

  tables(): Promise<readonly DevelopmentTable[]> {
    return this.service.call('tables', {});
  }

  spells(request: SpellsRequest): Promise<readonly SpellRow[]> {
    return this.service.call('spells', request);
  }

  spellEvents(after: number): Promise<readonly SpellEvent[]> {
    return this.service.call('spellEvents', { after });
  }

  acknowledgeSpell(id: string, note: string, who: string): Promise<SpellRow> {
    return this.service.call('acknowledgeSpell', { id, note, who });
  }

  settleExposure(id: string, how: Settled['how'], note: string, who: string): Promise<SpellRow> {
    return this.service.call('settleExposure', { id, how, note, who });
  }

  /** The copy comes from the service, the file is written by this command, where its person may write. */
  async backup(file: string): Promise<BackupMade> {
    refuseTaken(file);
    const dir = await mkdtemp(join(tmpdir(), 'underice-backup-'));
    try {
      const copy = join(dir, 'backup.duckdb');
      await pipeline(await this.service.bytes('/owner/backup'), createWriteStream(copy, { mode: 0o600 }));
      return { file, bytes: placeBackup(copy, file) };
    } finally {
      await rm(dir, { recursive: true, force: true });
    }
  }

  verify(): Promise<Verified> {
    return this.service.call('verify', {});
  }

  async exportAll(folder: string): Promise<ExportMade> {
    const dir = await mkdtemp(join(tmpdir(), 'underice-export-'));
    try {
      const copy = join(dir, 'backup.duckdb');
      await this.backup(copy);
      return await exportCopy(copy, folder);
    } finally {
      await rm(dir, { recursive: true, force: true });
    }
  }

  copyStore(to: StoreKind): Promise<StoreCopied> {
    return this.service.call('copyStore', { to });
  }

  async close(): Promise<void> {}

  private async sent(
    { path, name: called, station }: FileGiven,
    progress: LoadRequest['progress'],
  ): Promise<FileSent> {
    const name = called ?? path.split(/[\\/]/).at(-1) ?? path;
    const whose = station === undefined ? {} : { station };
    const found = await stat(path).catch(() => null);
    if (found === null) return { sent: null, instead: 'nothing', name, ...whose };
    if (!found.isFile()) return { sent: null, instead: 'folder', name, ...whose };
    let bytesRead = 0;
    const counted = new Transform({
      transform(chunk: Buffer, _, done) {
        bytesRead += chunk.length;
        progress?.({ file: name, bytesRead, bytes: found.size });
        done(null, chunk);
      },
    });
    const source = createReadStream(path);
    source.on('error', (error) => counted.destroy(error));
    const sent = await this.service.file(name, source.pipe(counted));
    return { sent, instead: null, name, ...whose };
  }
}
