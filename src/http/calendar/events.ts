import type { BoxForecast, Forecast, StageWindow } from '../../../forecasting/forecast.js';
import type { DayNumber } from '../../../forecasting/units.js';
import { cautions } from '../../group/forecast-answer.js';
import type { StationRow } from '../../group/index.js';
import type { Season } from '../../season/index.js';
import { type Language, longDay, stageName, words } from '../../words/index.js';

/** An entry of the calendar: whole days, `to` is the last of them. */
export interface Entry {
  /** The same for the same thing whenever it is asked for: a moved window moves in the phone. */
  readonly uid: string;
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly title: string;
  readonly about: string;
}

/** A station that reports is looked at every so many days at least (ours). */
const DOWNLOAD_EVERY = 14;

/** Every window not passed yet, of one box or of all: from the first egg's day to the last egg's, as best known. */
export function windowEntries(forecast: Forecast, box: string | null, language: Language): Entry[] {
  return forecast.boxes
    .filter((one) => box === null || one.box === box)
    .flatMap((one) => one.windows.flatMap((window) => windowEntry(one, window, language)));
}

function windowEntry(box: BoxForecast, window: StageWindow, language: Language): Entry[] {
  const { first, median, last, stage, passed } = window;
  if (passed || first.p50 === null || median.p50 === null) return [];
  const day = (moment: number | null) => (moment === null ? null : longDay(language, moment));
  const [from, to] = [day(median.p10) ?? day(first.p50), day(median.p90)];
  const figures = {
    box: box.box,
    stage: stageName(stage, language),
    median: longDay(language, median.p50),
    from: from ?? '',
    to,
  };
  return [
    {
      uid: `window ${box.box} ${stage}`,
      from: Math.floor(first.p50),
      to: Math.floor(last.p50 ?? median.p90 ?? median.p50),
      title: words(language, 'http-calendar-window', figures),
      about: [words(language, 'http-calendar-window-about', figures), ...cautions(language)].join('\n'),
    },
  ];
}

/** The last day of each permit, and the day its report is due. */
export function permitEntries(season: Season, language: Language): Entry[] {
  const day = (date: string) => Date.parse(`${date}T00:00Z`) / 86_400_000;
  return season.permits.flatMap(({ number, authority, from, to, reportDue }) => {
    const about = words(language, 'autumn-permit-about', { from, to, authority: authority ?? '' });
    const entry = (uid: string, date: string, title: string): Entry => ({
      uid,
      from: day(date),
      to: day(date),
      title,
      about,
    });
    const due = words(language, 'autumn-permit-report', { number });
    return [
      entry(`permit ${number}`, to, words(language, 'autumn-permit-ends', { number })),
      ...(reportDue === null ? [] : [entry(`permit report ${number}`, reportDue, due)]),
    ];
  });
}

/** When a station that reports and that a box relies on should have been downloaded again. */
export function downloadEntries(
  season: Season,
  rows: readonly StationRow[],
  box: string | null,
  today: DayNumber,
  language: Language,
): Entry[] {
  const boxes = season.boxes.filter(({ id, lifted }) => lifted === null && (box === null || id === box));
  const relied = new Set(
    boxes.flatMap(({ stations, site }) => [
      ...stations,
      ...season.sites.flatMap(({ id, station }) => (id === site && station !== null ? [station] : [])),
    ]),
  );
  return season.stations.flatMap(({ id, name, reports, dayOffset }) => {
    const last = rows
      .find(({ station }) => station === id)
      ?.records.find(({ quantity }) => quantity === 'temperature')?.last;
    if (!reports || !relied.has(id) || last === undefined) return [];
    const through = Math.floor((last + dayOffset * 60_000) / 86_400_000);
    const due = Math.max(through + DOWNLOAD_EVERY, today);
    return [
      {
        uid: `download ${id}`,
        from: due,
        to: due,
        title: words(language, 'http-calendar-download', { station: name }),
        about: words(language, 'http-calendar-download-about', { through: longDay(language, through) }),
      },
    ];
  });
}
