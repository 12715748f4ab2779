import { type Context, Hono } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import { type CalendarOf, calendarPath, nameOf } from '../../http/calendar/routes.js';
import type { Environment } from '../../http/environment.js';
import { known } from '../../http/middleware/language.js';
import { isLoopback } from '../../http/middleware/place.js';
import { Csrf, Frame, SameAs } from '../parts/frame.js';
import { ToCopy } from '../parts/to-copy.js';
import { mayEdit, type View, viewOf } from '../view.js';

/** The address a calendar program subscribes to: shown, copied, changed. */
export function calendarPages(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/calendars', async (c) => {
      const asked = { language: c.req.query('of'), box: c.req.query('box') };
      return c.html(await calendarPage(c, await calendarAsked(c, asked), c.req.query('changed') === 'yes'));
    })
    .post('/calendars/change', async (c) => {
      const { form, accounts, person } = c.var;
      const calendar = await calendarAsked(c, { language: form.field('of'), box: form.field('box') });
      await accounts.changeCalendar(nameOf(calendar), person.name);
      const box = calendar.box === null ? '' : `&box=${encodeURIComponent(calendar.box)}`;
      return c.redirect(`/calendars?of=${calendar.language}${box}&changed=yes`, 303);
    });
}

/** @throws UnknownName 'unknown-box' */
async function calendarAsked(
  c: Context<Environment>,
  asked: { readonly language: string | undefined; readonly box: string | undefined },
): Promise<CalendarOf> {
  const language = known(asked.language) ?? c.var.language;
  const box = asked.box === undefined || asked.box === '' ? null : asked.box;
  const boxes = (await c.var.group.season()).boxes.map(({ id }) => id);
  if (box !== null && !boxes.includes(box))
    throw new UnknownName({ code: 'unknown-box', with: { box: box.slice(0, 100), boxes } });
  return { language, box };
}

async function calendarPage(c: Context<Environment>, calendar: CalendarOf, changed: boolean) {
  const { base, accounts, group } = c.var;
  const path = calendarPath(accounts, calendar);
  const boxes = (await group.season()).boxes.map(({ id }) => id);
  return (
    <CalendarPage
      view={await viewOf(c)}
      calendar={calendar}
      boxes={boxes}
      base={base}
      path={path}
      changed={changed}
    />
  );
}

interface CalendarProps {
  readonly view: View;
  readonly calendar: CalendarOf;
  readonly boxes: readonly string[];
  readonly base: string;
  readonly path: string;
  readonly changed: boolean;
}

function CalendarPage({ view, calendar, boxes, base, path, changed }: CalendarProps) {
  const { say } = view;
  const { language, box } = calendar;
  const api = `/api/v1/calendar?language=${language}${box === null ? '' : `&box=${encodeURIComponent(box)}`}`;
  return (
    <Frame
      view={view}
      title={say('page-calendars-title', {})}
      answer={say('page-calendars-answer', { box })}
      scripts={['copy.js']}
    >
      {changed ? (
        <p class="note" role="status">
          {say('page-calendars-changed', {})}
        </p>
      ) : null}
      <form method="get" action="/calendars">
        <div class="fields">
          <label>
            {say('page-calendars-box', {})}
            <select name="box">
              <option value="">{say('page-calendars-every-box', {})}</option>
              {boxes.map((one) => (
                <option value={one} selected={one === box}>
                  {one}
                </option>
              ))}
            </select>
          </label>
          <label>
            {say('page-calendars-language', {})}
            <select name="of">
              <option value="en" selected={language === 'en'}>
                English
              </option>
              <option value="fr" selected={language === 'fr'}>
                Français
              </option>
            </select>
          </label>
          <button type="submit" class="quiet">
            {say('page-calendars-choose', {})}
          </button>
        </div>
      </form>
      <ToCopy view={view} label={say('page-calendars-address', {})} text={`${base}${path}`} />
      <p>
        <a href={path}>{say('page-calendars-file', {})}</a>
      </p>
      <p>{say('page-calendars-who', {})}</p>
      {isLoopback(new URL(base).hostname) ? <p class="note">{say('page-calendars-here-only', {})}</p> : null}
      {mayEdit(view) ? (
        <form method="post" action="/calendars/change" class="sheet">
          <h2>{say('page-calendars-change', {})}</h2>
          <p>{say('page-calendars-change-what', {})}</p>
          <Csrf view={view} />
          <input type="hidden" name="of" value={language} />
          <input type="hidden" name="box" value={box ?? ''} />
          <button type="submit" class="quiet">
            {say('page-calendars-change-do', {})}
          </button>
        </form>
      ) : null}
      <SameAs view={view} json={api} />
    </Frame>
  );
}
