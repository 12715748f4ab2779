import type { Quantity, SeriesKey } from '../batch.js';
import { type AdapterRemark, type Asked, DownloadRefused } from '../download.js';
import { type Conversion, conversionOf, isAir, isWater, quantityOf, TEMPERATURES } from './observed.js';
import type { SurveyedSeries } from './waterml-survey.js';

/** A series that is read, and how. */
export interface TakenSeries {
  readonly key: SeriesKey;
  readonly conversion: Conversion;
  readonly property: string;
}

export interface Choice {
  /** In the document's order; null where a series is left. */
  readonly taken: readonly (TakenSeries | null)[];
  readonly assumed: readonly AdapterRemark[];
}

interface Candidate {
  readonly index: number;
  readonly surveyed: SurveyedSeries;
  readonly quantity: Quantity;
  readonly conversion: Conversion;
}

/** A number alone is taken for °C up to here; above, it may be °F (ours: no river in winter is warmer). */
const WARMEST_ASSUMED = 31;

/** Decides which series of a document are read, in which unit and under which station's name. */
export class WaterMlChoice {
  private readonly remarks: AdapterRemark[] = [];

  constructor(private readonly asked: Asked) {}

  /** @throws DownloadRefused where nothing is of use, or a person has to say which series or unit it is */
  of(surveyed: readonly SurveyedSeries[]): Choice {
    const candidates = surveyed.flatMap((series, index) => this.candidate(series, index) ?? []);
    if (candidates.length === 0) {
      const headers = [...new Set(surveyed.map(({ heading }) => heading.property))];
      throw new DownloadRefused({ code: 'no-temperature-column', with: { headers } });
    }
    const chosen = this.oneOfEach(candidates);
    const station = this.stationAsked(chosen);
    const taken = new Array<TakenSeries | null>(surveyed.length).fill(null);
    for (const candidate of chosen) taken[candidate.index] = takenOf(candidate, station);
    return { taken, assumed: this.remarks };
  }

  private candidate(surveyed: SurveyedSeries, index: number): Candidate | null {
    const { unit, about } = surveyed.heading;
    const said = quantityOf(about);
    const stated = unit === null ? null : conversionOf(unit);
    if (stated === null) {
      if (said !== 'temperature' || surveyed.points === 0) return null;
      return { index, surveyed, quantity: 'temperature', conversion: this.unstated(surveyed) };
    }
    const fits = stated.quantity === said || (said === null && stated.quantity !== 'level');
    if (!fits) return null;
    if (stated.unit !== null) this.compareUnit(stated.unit);
    return { index, surveyed, quantity: stated.quantity, conversion: stated };
  }

  private compareUnit(stated: string): void {
    const { unit } = this.asked;
    if (unit === undefined || unit === stated) return;
    if (this.remarks.some(({ code }) => code === 'unit-asked-not-used')) return;
    this.remarks.push({ code: 'unit-asked-not-used', with: { asked: unit, stated } });
  }

  private unstated({ heading, smallest, largest }: SurveyedSeries): Conversion {
    if (this.asked.unit !== undefined) return TEMPERATURES[this.asked.unit];
    if (heading.unit !== null || largest > WARMEST_ASSUMED)
      throw new DownloadRefused(
        { code: 'no-unit', with: { smallest, largest } },
        { code: 'which-unit', with: {} },
      );
    this.remarks.push({ code: 'unit-assumed', with: { unit: 'C', smallest, largest } });
    return TEMPERATURES.C;
  }

  /** Of each station one temperature of water and one of air; several series of one property are its parts. */
  private oneOfEach(candidates: readonly Candidate[]): readonly Candidate[] {
    const temperatures = candidates.filter(({ quantity }) => quantity === 'temperature');
    const others = candidates.filter(({ quantity }) => quantity !== 'temperature');
    const { column } = this.asked;
    if (column === undefined) {
      for (const place of new Set(temperatures.map(placeOf)))
        refuseSeveral(properties(temperatures.filter((one) => placeOf(one) === place)));
      return candidates;
    }
    const named = temperatures.filter(({ surveyed }) => sameName(surveyed.heading.property, column));
    const headers = properties(temperatures);
    if (named.length === 0)
      throw new DownloadRefused({ code: 'unknown-column', with: { asked: column, headers } });
    return named.concat(others);
  }

  /** The person's word for the document's one station; null where they said none. */
  private stationAsked(chosen: readonly Candidate[]): string | null {
    const asked = this.asked.station;
    if (asked === undefined) return null;
    const stations = [...new Set(chosen.map(({ surveyed }) => surveyed.heading.station))];
    if (stations.length > 1)
      throw new DownloadRefused(
        { code: 'several-stations', with: { asked, stations: stations.map((name) => name ?? '–') } },
        { code: 'leave-station-out', with: {} },
      );
    const [stated] = stations;
    if (stated != null && stated !== asked)
      this.remarks.push({ code: 'station-asked-not-file', with: { asked, stated } });
    return asked;
  }
}

const mediumOf = (about: string): 'water' | 'air' | null =>
  isAir(about) ? 'air' : isWater(about) ? 'water' : null;

/** Station and medium, as one text to compare. */
const placeOf = ({ surveyed: { heading } }: Candidate): string =>
  `${mediumOf(heading.about) ?? ''} ${heading.station ?? ''}`;

function refuseSeveral(columns: readonly string[]): void {
  if (columns.length < 2) return;
  throw new DownloadRefused(
    { code: 'several-columns', with: { columns } },
    { code: 'which-column', with: { columns } },
  );
}

const properties = (group: readonly Candidate[]): readonly string[] => [
  ...new Set(group.map(({ surveyed }) => surveyed.heading.property)),
];

const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

function takenOf({ surveyed, quantity, conversion }: Candidate, asked: string | null): TakenSeries {
  const { station, about, property } = surveyed.heading;
  const span = surveyed.points > 0 && surveyed.wholeDays === surveyed.points ? 'day' : 'instant';
  return {
    key: { station: asked ?? station, quantity, span, medium: mediumOf(about), place: null },
    conversion,
    property,
  };
}
