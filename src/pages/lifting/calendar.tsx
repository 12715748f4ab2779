import type { DayOfPlan } from '../../../forecasting/index.js';
import { type LiftingState, reasonOf } from '../../lifting/index.js';
import { nameIn } from '../../season/index.js';
import { isoDay } from '../../words/index.js';
import type { View } from '../view.js';

/** 5 January 1970 was a Monday. */
const MONDAY = 4;
/** Days shown before the first and after the last lifting day. */
const AROUND = 7;

/** The days around the plan, week by week: the chance, what is blocked, and the sites of planned days. */
export function CrewCalendar({ view, state }: { view: View; state: LiftingState }) {
  const { plan, season } = state;
  const [first] = plan.recommended;
  const last = plan.recommended.at(-1);
  if (first === undefined || last === undefined) return null;
  const begin = Math.max(mondayOf(first.day - AROUND), mondayOf(plan.asOf));
  const weeks = Math.ceil((last.day + AROUND + 1 - begin) / 7);
  const days = new Map(plan.days.map((day) => [day.day, day]));
  const planned = new Map(plan.recommended.map((one) => [one.day, one]));
  const name = (site: string) => nameIn(season.sites, site);
  return (
    <section>
      <h2>{view.say('page-lifting-calendar', {})}</h2>
      <table class="weeks">
        <caption>{view.say('page-lifting-calendar', {})}</caption>
        <thead>
          <tr>
            {Array.from({ length: 7 }, (_, i) => (
              <th scope="col">{weekday(view, begin + i)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: weeks }, (_, week) => (
            <tr>
              {Array.from({ length: 7 }, (_, i) => {
                const at = begin + 7 * week + i;
                const lifting = planned.get(at);
                return (
                  <td class={lifting === undefined ? undefined : 'planned'}>
                    <Day view={view} state={state} at={at} day={days.get(at)} />
                    {lifting?.sites.map((site) => (
                      <a href={sheetAddress(at, site)}>{name(site)}</a>
                    ))}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">{view.say('page-lifting-calendar-note', {})}</p>
    </section>
  );
}

function Day(props: { view: View; state: LiftingState; at: number; day: DayOfPlan | undefined }) {
  const { view, state, at, day } = props;
  const blocked = day === undefined ? null : reasonOf(day.blocked, state, view.language);
  return (
    <>
      <span class="date">{view.short(at)}</span>
      {day === undefined ? null : blocked === null ? (
        <span>{view.percent(day.chance)}</span>
      ) : (
        <span class="blocked">{blocked}</span>
      )}
    </>
  );
}

export function sheetAddress(day: number, site: string): string {
  return `/lifting/sheets/${isoDay(day)}/${encodeURIComponent(site)}`;
}

function mondayOf(day: number): number {
  return day - ((((day - MONDAY) % 7) + 7) % 7);
}

function weekday(view: View, day: number): string {
  const format = new Intl.DateTimeFormat(view.language === 'fr' ? 'fr-CA' : 'en-CA', {
    weekday: 'short',
    timeZone: 'UTC',
  });
  return format.format(new Date(day * 86_400_000));
}
