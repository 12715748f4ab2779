import type { EpochMillis, Folder, Quantity, StationRecord } from '../store/index.js';

/** Readings kept, of all stations together: 40 MB. What is more is read again each time. */
const MOST_READINGS = 2_000_000;

interface Kept {
  readonly revision: number;
  readonly from: EpochMillis;
  readonly record: StationRecord;
}

/** The stations' readings since the season's eggs, read again only where a write touched the station. */
export class SeasonRecords {
  private readonly kept = new Map<string, Kept>();
  private readings = 0;

  constructor(private readonly store: Pick<Folder, 'record' | 'revision'>) {}

  /** As `Folder.record`; the columns are not to be changed. */
  async between(
    station: string,
    quantity: Quantity,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<StationRecord> {
    const asked = `${quantity} ${station}`;
    const revision = this.store.revision(station);
    const known = this.kept.get(asked);
    if (known?.revision === revision && known.from === from) return before(to, known.record);
    const record = await this.store.record(station, quantity, from, Number.POSITIVE_INFINITY);
    this.keep(asked, { revision, from, record: owned(record) });
    return before(to, record);
  }

  private keep(asked: string, kept: Kept): void {
    this.readings -= this.kept.get(asked)?.record.at.length ?? 0;
    this.kept.delete(asked);
    if (this.readings + kept.record.at.length > MOST_READINGS) return;
    this.kept.set(asked, kept);
    this.readings += kept.record.at.length;
  }
}

function before(to: EpochMillis, record: StationRecord): StationRecord {
  let end = record.at.length;
  while (end > 0 && record.at[end - 1]! >= to) end--;
  return part(record, end, 'subarray');
}

/** In memory of its own: what was read may be a small part of what it was read into. */
const owned = (record: StationRecord) => part(record, record.at.length, 'slice');

function part(
  { at, value, flag, load }: StationRecord,
  end: number,
  how: 'slice' | 'subarray',
): StationRecord {
  return { at: at[how](0, end), value: value[how](0, end), flag: flag[how](0, end), load: load[how](0, end) };
}
