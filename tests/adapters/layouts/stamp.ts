import type { Wall } from './clock.js';

export type Language = 'en' | 'fr';

/** How a date is written. `d-mon-y` and `mon-d-y` use the month's name. */
export type DateForm =
  | 'y-m-d'
  | 'y/m/d'
  | 'd/m/y'
  | 'd.m.y'
  | 'd-m-y'
  | 'm/d/y'
  | 'd/m/yy'
  | 'm/d/yy'
  | 'd-mon-y'
  | 'd mon y'
  | 'd month y'
  | 'mon d, y';

export interface Stamp {
  readonly date: DateForm;
  readonly clock: 12 | 24;
  readonly seconds: boolean;
  /** Date and clock in two columns. */
  readonly apart: boolean;
  /** What stands between date and clock in one column. */
  readonly between: ' ' | 'T';
  /** Day and month as 3 rather than 03. */
  readonly bare: boolean;
}

const SHORT: Record<Language, readonly string[]> = {
  en: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  fr: ['janv.', 'févr.', 'mars', 'avr.', 'mai', 'juin', 'juill.', 'août', 'sept.', 'oct.', 'nov.', 'déc.'],
};

const LONG: Record<Language, readonly string[]> = {
  en: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ],
  fr: [
    'janvier',
    'février',
    'mars',
    'avril',
    'mai',
    'juin',
    'juillet',
    'août',
    'septembre',
    'octobre',
    'novembre',
    'décembre',
  ],
};

const two = (n: number): string => String(n).padStart(2, '0');

export function dateText(wall: Wall, stamp: Stamp, language: Language): string {
  const number = stamp.bare ? String : two;
  const [y, yy, m, d] = [String(wall.year), two(wall.year % 100), number(wall.month), number(wall.day)];
  const mon = SHORT[language][wall.month - 1]!;
  switch (stamp.date) {
    case 'y-m-d':
      return `${y}-${m}-${d}`;
    case 'y/m/d':
      return `${y}/${m}/${d}`;
    case 'd/m/y':
      return `${d}/${m}/${y}`;
    case 'd.m.y':
      return `${d}.${m}.${y}`;
    case 'd-m-y':
      return `${d}-${m}-${y}`;
    case 'm/d/y':
      return `${m}/${d}/${y}`;
    case 'd/m/yy':
      return `${d}/${m}/${yy}`;
    case 'm/d/yy':
      return `${m}/${d}/${yy}`;
    case 'd-mon-y':
      return `${d}-${mon}-${y}`;
    case 'd mon y':
      return `${d} ${mon} ${y}`;
    case 'd month y':
      return `${d} ${LONG[language][wall.month - 1]} ${y}`;
    case 'mon d, y':
      return `${mon} ${d}, ${y}`;
  }
}

export function clockText(wall: Wall, stamp: Stamp): string {
  const rest = `:${two(wall.minute)}${stamp.seconds ? `:${two(wall.second)}` : ''}`;
  if (stamp.clock === 24) return `${two(wall.hour)}${rest}`;
  const hour = wall.hour % 12 === 0 ? 12 : wall.hour % 12;
  return `${stamp.bare ? hour : two(hour)}${rest} ${wall.hour < 12 ? 'AM' : 'PM'}`;
}

/** Days since 1899-12-30, as spreadsheets count them (their 1900 system, from 1 March 1900 on). */
export function serialDay(wall: Wall): number {
  const shown = Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute, wall.second);
  return (shown - Date.UTC(1899, 11, 30)) / 86_400_000;
}
