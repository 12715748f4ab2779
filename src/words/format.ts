import { DateTime } from 'luxon';

/** The languages every face speaks. */
export const languages = ['en', 'fr'] as const;
export type Language = (typeof languages)[number];

const locale: Record<Language, string> = { en: 'en-CA', fr: 'fr-CA' };

const numberFormats = new Map<string, Intl.NumberFormat>();

/** Making a format costs a hundred times what using it does. */
function numberFormat(language: Language, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const asked = `${language} ${JSON.stringify(options)}`;
  const made = numberFormats.get(asked) ?? new Intl.NumberFormat(locale[language], options);
  numberFormats.set(asked, made);
  return made;
}

/** Figures for people carry the minus sign U+2212, which stands at a plus sign's height; locales write U+002D. */
const minus = (figure: string): string => figure.replace('-', '\u2212');

/**
 * A number with its decimals fixed: 1234.5 is "1,234.5" in English, "1 234,5" (non-breaking) in French; no "−0.0". For
 * people only: what is read back (CSV, JSON, a form's values) keeps the hyphen-minus, so is never written with this.
 */
export function decimal(language: Language, value: number, digits: number): string {
  return minus(
    numberFormat(language, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      // What rounds to nothing has no sign: a logger's -0.02 °C is 0.0, never −0.0.
      signDisplay: 'negative',
    }).format(value),
  );
}

/** A figure as its source states it: every digit it has, up to seven. */
export function significant(language: Language, value: number): string {
  return minus(numberFormat(language, { maximumSignificantDigits: 7, useGrouping: false }).format(value));
}

/** A whole number, digits grouped as the language does. */
export function whole(language: Language, value: number): string {
  return decimal(language, Math.round(value), 0);
}

/** A fraction 0-1 as a percentage: 0.8 is "80%" in English, "80 %" (non-breaking) in French. */
export function percent(language: Language, fraction: number, digits = 0): string {
  return minus(numberFormat(language, { style: 'percent', maximumFractionDigits: digits }).format(fraction));
}

/** A day number (days since 1970-01-01, fraction ignored) as an ISO date. */
export function isoDay(day: number): string {
  return new Date(Math.floor(day) * 86_400_000).toISOString().slice(0, 10);
}

/** The day of a month as people write it: French says "1er", then "2", "3"… */
function dayOfMonth(language: Language, day: DateTime): string {
  return language === 'fr' && day.day === 1 ? '1er' : String(day.day);
}

function calendarDay(language: Language, day: number): DateTime {
  return DateTime.fromISO(isoDay(day), { zone: 'utc' }).setLocale(language === 'fr' ? 'fr-CA' : 'en-GB');
}

/** Days written before: a page says the same few hundred again and again, and a calendar's words take long to find. */
const daysWritten = new Map<string, string>();
const MOST_DAYS_WRITTEN = 10_000;

function written(language: Language, day: number, format: string): string {
  const asked = `${language} ${format} ${Math.floor(day)}`;
  const known = daysWritten.get(asked);
  if (known !== undefined) return known;
  const at = calendarDay(language, day);
  const made = `${dayOfMonth(language, at)} ${at.toFormat(format)}`;
  if (daysWritten.size >= MOST_DAYS_WRITTEN) daysWritten.clear();
  daysWritten.set(asked, made);
  return made;
}

/** A day number as people write it: "4 March 2026", "4 mars 2026", "1er mars 2026". */
export function longDay(language: Language, day: number): string {
  return written(language, day, 'MMMM yyyy');
}

/** An ISO date as people write it; anything else as it is: "4 March 2026". */
export function writtenDay(language: Language, date: string): string {
  return /^\d{4}-\d\d-\d\d$/.test(date) ? longDay(language, Date.parse(`${date}T00:00Z`) / 86_400_000) : date;
}

/** From one day to another; a single day is named once: "from 4 March 2026 to 6 March 2026", "on 4 March 2026". */
export function daysFromTo(language: Language, from: number, to: number): string {
  const [first, last] = [longDay(language, from), longDay(language, to)];
  if (first === last) return language === 'fr' ? `le ${first}` : `on ${first}`;
  return language === 'fr' ? `du ${first} au ${last}` : `from ${first} to ${last}`;
}

/** A day number in a narrow column: "4 Mar", "4 mars". */
export function shortDay(language: Language, day: number): string {
  return written(language, day, 'MMM');
}

/**
 * An instant where people are: "4 Mar 2026, 07:30", "4 mars 2026, 7 h 30", "4 mars 2026, 7 h" (the clock non-breaking;
 * no zero before the hour, none after a full one: Office québécois de la langue française, "Heure", from memory).
 */
export function dayAndTime(language: Language, at: number, zone: string): string {
  const then = DateTime.fromMillis(at, { zone }).setLocale(language === 'fr' ? 'fr-CA' : 'en-GB');
  return `${dayOfMonth(language, then)} ${then.toFormat(`MMM yyyy, ${clockFormat(language, then)}`)}`;
}

/** The clock alone: "07:30", "7 h 30". */
export function clock(language: Language, at: number, zone: string): string {
  const then = DateTime.fromMillis(at, { zone });
  return then.toFormat(clockFormat(language, then));
}

function clockFormat(language: Language, { minute }: DateTime): string {
  return language === 'en' ? 'HH:mm' : minute === 0 ? "H'\u00a0h'" : "H'\u00a0h\u00a0'mm";
}

/** An instant as ISO 8601 UTC with seconds, milliseconds only where there are any. */
export function isoInstant(at: number): string {
  return new Date(at).toISOString().replace('.000Z', 'Z');
}

/** "a, b and c" / "a, b et c". */
export function list(language: Language, items: readonly string[]): string {
  return new Intl.ListFormat(locale[language], { type: 'conjunction' }).format(items);
}

/** Names in a sentence, which a reader still takes in: of very many the first, and how many more there are. */
export function fewOf(language: Language, names: readonly string[], most = 12): string {
  const more = names.length - most;
  if (more < 2) return list(language, names);
  return list(language, [
    ...names.slice(0, most),
    `${whole(language, more)} ${language === 'fr' ? 'autres' : 'more'}`,
  ]);
}
