import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Season } from '../season/index.js';
import { checkedFirst, type RiverSource, spellInput } from '../spells/at-risk.js';
import { asked, SpellBook } from '../spells/book.js';
import type { Settled, SpellEvent, SpellRow, SpellsRequest } from '../spells/contract.js';
import { SeasonRecords } from '../spells/season-records.js';
import type { Folder } from '../store/index.js';
import type { Group } from './group.js';
import { stationFindings } from './judging/findings.js';
import { Remembered } from './remembered.js';
import type { View } from './view.js';

/** What judging rests on in the rest of the group. */
export interface SpellGround extends Pick<Group, 'season' | 'forecast' | 'stations'> {
  readonly revision: number;
  /** Judges the readings of stations since a moment, where no write is under way; whether all that came is judged then. */
  checked(stations: readonly string[], since: number): Promise<boolean>;
  /** Once all that came is judged, where no write is under way. */
  allChecked(): Promise<void>;
  tablesOf(season: Season): ReadonlyMap<string, DevelopmentTable>;
}

/** A group's spells as they stand on the day it is shown as of: judged where a write or a new day calls for it. */
export class JudgedSpells {
  private readonly judged = new Remembered<readonly SpellRow[]>(1);
  private readonly book: SpellBook;
  private readonly records: SeasonRecords;

  constructor(
    private readonly store: Folder,
    private readonly view: View,
    private readonly group: SpellGround,
  ) {
    this.book = new SpellBook(store);
    this.records = new SeasonRecords(store);
  }

  async asked(request: SpellsRequest): Promise<readonly SpellRow[]> {
    return asked(await this.standing(), request);
  }

  async events(after: number): Promise<readonly SpellEvent[]> {
    // Nothing is told of what may be another once the checks have looked at all.
    await this.group.allChecked();
    await this.standing();
    await this.book.kept();
    return this.book.events(this.view.key, after);
  }

  /** Once a spell that is shown is kept, so that something can be said of it. */
  async known(id: string): Promise<void> {
    const kept = await this.store.catalogue.spells(this.view.key);
    if (kept.some((one) => one.id === id)) return;
    await this.group.allChecked();
    await this.standing();
  }

  acknowledge(id: string, note: string, who: string): Promise<SpellRow> {
    return this.book.acknowledge(this.view.key, id, note, who);
  }

  settle(id: string, how: Settled['how'], note: string, who: string): Promise<SpellRow> {
    return this.book.settle(this.view.key, id, how, note, who);
  }

  private async standing(): Promise<readonly SpellRow[]> {
    const { view, group } = this;
    const season = await group.season();
    const day = view.day(season);
    const now = view.instant(season);
    return this.judged.of(group.revision, String(day), async () => {
      const river = this.river(season, day);
      const whole = await checkedFirst(season, river);
      return this.book.judged({
        view: view.key,
        day,
        now,
        whole,
        input: async () => {
          const forecast = await group.forecast({ box: null, asOf: null });
          return spellInput(season, forecast, group.tablesOf(season), river, now);
        },
      });
    });
  }

  /** The river's readings as far as they were known on a day. */
  private river(season: Season, day: DayNumber): RiverSource {
    const { store, records, view, group } = this;
    let asked: ReturnType<Folder['catalogue']['allFindings']> | null = null;
    // All at once, with the first station: the checks have looked by then.
    const found = () => {
      asked ??= store.catalogue.allFindings();
      return asked;
    };
    return {
      record: (station, quantity, from, to) => records.between(station, quantity, from, to),
      checked: (stations, since) => group.checked(stations, since),
      findings: async (station) =>
        stationFindings((await found()).get(station) ?? [], station, season).filter(
          ({ ruling, quantity }) => quantity === 'temperature' && ruling?.verdict !== 'good',
        ),
      days: () => view.days(season, day),
      known: (station) => view.known(season, station, day),
      recorded: async (quantity) =>
        new Set(
          (await group.stations())
            .filter(({ records }) => records.some((record) => record.quantity === quantity))
            .map(({ station }) => station),
        ),
    };
  }
}
