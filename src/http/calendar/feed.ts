import ical from 'ical-generator';
import type { Group } from '../../group/index.js';
import { liftingState } from '../../lifting/index.js';
import { type Language, words } from '../../words/index.js';
import { hashOf } from '../sign-in/secrets.js';
import { downloadEntries, permitEntries, windowEntries } from './events.js';
import { liftingEntries } from './lifting-days.js';

const DAY = 86_400_000;
/** Phones that ask for advice on how often to look get this: four times a day. */
const LOOK_AGAIN_SECONDS = 6 * 3600;
/** Sequence numbers count from this day (2020-01-01). */
const FIRST_DAY = 18_262;

/**
 * A group's calendar, or one box's, as iCalendar (RFC 5545). `place` tells this group's entries from another's.
 *
 * SEQUENCE is the sum of what moves a window, none of which ever falls: the day, the loads and withdrawals, the
 * versions of the season. A window that moved comes with a higher one, and nothing has to be remembered for it.
 */
export async function calendarFeed(
  group: Group,
  { box, language, place }: { box: string | null; language: Language; place: string },
): Promise<string> {
  const [forecast, season, rows, loads, versions, today] = [
    await group.forecast({ box, asOf: null }),
    await group.season(),
    await group.stations(),
    await group.loads(),
    await group.seasonVersions(),
    await group.today(),
  ];
  const changes = loads.length + loads.filter(({ withdrawn }) => withdrawn !== null).length + versions.length;
  const sequence = today - FIRST_DAY + changes;
  const name = words(language, 'http-calendar-name', { group: season.group.name, box });
  const calendar = ical({
    name,
    prodId: { company: 'underice', product: 'calendar', language: language.toUpperCase() },
    ttl: LOOK_AGAIN_SECONDS,
  });
  const entries = [
    ...liftingEntries(await liftingState(group, null), box, language),
    ...windowEntries(forecast, box, language),
    ...downloadEntries(season, rows, box, today, language),
    ...(box === null ? permitEntries(season, language) : []),
  ];
  for (const { uid, from, to, title, about } of entries) {
    calendar.createEvent({
      id: `${hashOf(`${place} ${uid}`).slice(0, 24)}@underice`,
      allDay: true,
      start: new Date(from * DAY),
      end: new Date((to + 1) * DAY),
      stamp: new Date(today * DAY),
      sequence,
      summary: title,
      description: about,
    });
  }
  return calendar.toString();
}
