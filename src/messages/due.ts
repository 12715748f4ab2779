import { DateTime } from 'luxon';
import type { EpochMillis } from '../../forecasting/units.js';
import { kindOf } from './kinds/index.js';
import { type News, urgencyOf } from './news.js';
import type { Recipient } from './people.js';

/** When a weekly summary goes out, on its day, in the group's zone (ours). */
const WEEKLY_HOUR = 7;

/** From when on a person is told of something; null where they chose not to be. */
export function dueFor(person: Recipient, news: News, at: EpochMillis, zone: string): EpochMillis | null {
  const { subject } = kindOf(news);
  if (subject !== null && !person.subjects.includes(subject)) return null;
  const urgency = urgencyOf(news);
  if (urgency === 'now' || news.kind === 'weekly') return at;
  if (urgency === 'weekly') return person.weekly === null ? null : nextWeekly(person.weekly, at, zone);
  return afterQuiet(person, at, zone);
}

/** The end of the quiet hours where `at` lies in them, else `at`. */
export function afterQuiet({ quiet }: Pick<Recipient, 'quiet'>, at: EpochMillis, zone: string): EpochMillis {
  if (quiet === null || quiet.from === quiet.to) return at;
  const here = DateTime.fromMillis(at, { zone });
  const now = here.toFormat('HH:mm');
  const overnight = quiet.from > quiet.to;
  const inside = overnight ? now >= quiet.from || now < quiet.to : now >= quiet.from && now < quiet.to;
  if (!inside) return at;
  const [hour = 0, minute = 0] = quiet.to.split(':').map(Number);
  const end = here.set({ hour, minute, second: 0, millisecond: 0 });
  return (end <= here ? end.plus({ days: 1 }) : end).toMillis();
}

/** The moment a person's summary is due next, after `at`. */
export function nextWeekly(weekday: number, at: EpochMillis, zone: string): EpochMillis {
  const last = DateTime.fromMillis(lastWeekly(weekday, at, zone), { zone });
  return last.plus({ weeks: 1 }).toMillis();
}

/** The moment a person's summary was due last, at or before `at`. */
export function lastWeekly(weekday: number, at: EpochMillis, zone: string): EpochMillis {
  const here = DateTime.fromMillis(at, { zone });
  const day = here.minus({ days: (here.weekday - weekday + 7) % 7 });
  const due = day.set({ hour: WEEKLY_HOUR, minute: 0, second: 0, millisecond: 0 });
  return (due > here ? due.minus({ weeks: 1 }) : due).toMillis();
}
