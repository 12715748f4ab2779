import { type Context, Hono } from 'hono';
import { raw } from 'hono/html';
import { asFile } from '../../http/csv.js';
import type { Environment } from '../../http/environment.js';
import {
  beginNext,
  closeSeason,
  type LateChanges,
  lateChanges,
  type NextSeason,
  nextSeason,
  printed,
  type ReportKind,
  ReportRefused,
  reportFiles,
  seasonReport,
  seasonsThere,
  within,
} from '../../reports/index.js';
import { say as sayRemark } from '../../words/index.js';
import { isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { Csrf, Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { Refusal } from '../parts/refusal.js';
import { mayEdit, type View, viewOf } from '../view.js';
import { mapAsked, SeasonChoice, seasonAsked } from './choice.js';

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json; charset=utf-8',
};

const TITLES = {
  report: 'report-title',
  funder: 'report-funder-title',
  permits: 'report-permits-title',
} as const;

/** The season's reports as pages to read and print, their files, closing a season and beginning the next. */
export function reportRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/report', async (c) => c.html(await reportPage(c, 'report')))
    .get('/report/funder', async (c) => c.html(await reportPage(c, 'funder')))
    .get('/report/permits', async (c) => c.html(await reportPage(c, 'permits')))
    .get('/report-files/:file', async (c) => {
      const { group, language, today } = c.var;
      const { documents, season } = await seasonReport(group, seasonAsked(c));
      const name = c.req.param('file');
      const files = reportFiles(documents, language, today, mapAsked(c));
      const text = Object.hasOwn(files, name) ? files[name] : undefined;
      const type = TYPES[name.split('.').at(-1) ?? ''];
      if (text === undefined || type === undefined) return c.notFound();
      return c.body(text, 200, { 'Content-Type': type, 'Content-Disposition': asFile(`${season}-${name}`) });
    })
    .post('/report/close', async (c) => {
      try {
        const by = c.var.form.field('by').trim();
        await closeSeason(c.var.group, by || c.var.person.name);
      } catch (error) {
        if (!isRefusal(error)) throw error;
        return c.html(await reportPage(c, 'report', sayRefusalOnPage(c.var.language, error)), 422);
      }
      return c.redirect('/report', 303);
    })
    .get('/report/next', async (c) => c.html(await nextPage(c)))
    .post('/report/next', async (c) => {
      await beginNext(c.var.group, c.var.person.name);
      return c.redirect('/', 303);
    });
}

async function reportPage(c: Context<Environment>, kind: ReportKind, refusal?: string) {
  const view = await viewOf(c);
  const { group, today, language } = c.var;
  const there = await seasonsThere(group);
  const { season, closed, documents, figures } = await seasonReport(group, seasonAsked(c));
  const map = mapAsked(c);
  const { body } = within(printed(documents, language, kind, today, map));
  const query = new URLSearchParams({ season, ...(map === 'none' ? {} : { map }) });
  const path = kind === 'report' ? '/report' : `/report/${kind}`;
  const late = closed === null || kind !== 'report' ? null : await lateChanges(group, season);
  return (
    <Frame
      view={view}
      title={view.say(TITLES[kind], { group: figures.group, season })}
      current="report"
      cautions={false}
    >
      <Refusal text={refusal} />
      <SeasonChoice view={view} there={there} season={season} path={path} />
      <Ways view={view} kind={kind} query={query} />
      {late === null || late.changes.length === 0 ? null : (
        <p class="small no-print">
          <a href="#late">{view.say('late-some', { changes: late.changes.length })}</a>
        </p>
      )}
      {/* Kept or just made by src/reports, a person's words in it escaped. */}
      <div class={`report ${kind}`}>{raw(body)}</div>
      {late === null ? null : <Late view={view} changes={late.changes} />}
      <Files view={view} query={query} names={Object.keys(reportFiles(documents, language, today, map))} />
      {mayEdit(view) && kind === 'report' ? (
        <Ending view={view} open={there.open} season={season} closed={closed !== null} />
      ) : null}
      <p class="no-print">
        <WorkedOut view={view} about="survival" />
      </p>
      <SameAs
        view={view}
        json={`/api/v1/report?season=${encodeURIComponent(season)}`}
        csv={`/report-files/boxes.csv?season=${encodeURIComponent(season)}`}
      />
    </Frame>
  );
}

/** What was loaded after the closing, and what it would have changed. */
function Late({ view: { say, language }, changes }: { view: View; changes: LateChanges['changes'] }) {
  return (
    <section class="no-print" id="late">
      <h2>{say('page-report-late', {})}</h2>
      <p>{changes.length === 0 ? say('late-none', {}) : say('late-some', { changes: changes.length })}</p>
      <ul>
        {changes.map((change) => (
          <li>{sayRemark(language, change)}</li>
        ))}
      </ul>
    </section>
  );
}

function Ways({ view, kind, query }: { view: View; kind: ReportKind; query: URLSearchParams }) {
  const { say } = view;
  const season = query.get('season') ?? '';
  const path = kind === 'report' ? '/report' : `/report/${kind}`;
  const link = (href: string, name: string, here: boolean) => (
    <li>
      <a href={href} aria-current={here ? 'page' : undefined}>
        {name}
      </a>
    </li>
  );
  const kinds = [
    ['report', 'page-report-season'],
    ['funder', 'page-report-funder'],
    ['permits', 'page-report-permits'],
  ] as const;
  const asked = encodeURIComponent(season);
  return (
    <nav class="choose" aria-label={say('page-nav-report', {})}>
      <ul class="links">
        {kinds.map(([one, word]) =>
          link(`${one === 'report' ? '/report' : `/report/${one}`}?${query}`, say(word, {}), one === kind),
        )}
        {link(`/survival?season=${asked}`, say('page-report-survival', {}), false)}
      </ul>
      {kind === 'report' ? (
        <p class="small">
          {view.named(say('page-report-map', {}), '')}
          {(['none', 'coarse', 'exact'] as const).map((way) => (
            <>
              <a
                href={`${path}?season=${asked}&map=${way}`}
                aria-current={way === (query.get('map') ?? 'none') ? 'page' : undefined}
              >
                {say(`page-report-map-${way}`, {})}
              </a>{' '}
            </>
          ))}
        </p>
      ) : null}
    </nav>
  );
}

function Files({
  view: { say },
  query,
  names,
}: {
  view: View;
  query: URLSearchParams;
  names: readonly string[];
}) {
  return (
    <section class="no-print">
      <h2>{say('page-report-files', {})}</h2>
      <ul class="links">
        {names.map((name) => (
          <li>
            <a href={`/report-files/${name}?${query}`}>{say('page-report-file', { file: name })}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface EndingProps {
  readonly view: View;
  readonly open: string | null;
  readonly season: string;
  readonly closed: boolean;
}

/** Closing the open season; beginning the next one once it is closed. */
function Ending({ view, open, season, closed }: EndingProps) {
  const { say } = view;
  if (open !== null && open === season)
    return (
      <form method="post" action="/report/close" class="sheet">
        <h2 id="close">{say('page-report-close', {})}</h2>
        <p>{say('page-report-close-what', {})}</p>
        <Csrf view={view} />
        <label>
          {say('page-report-close-by', {})}
          <input name="by" autocomplete="name" maxlength={100} />
        </label>
        <button type="submit">{say('page-report-close-do', { season })}</button>
      </form>
    );
  if (open !== null || !closed) return null;
  return (
    <p class="no-print">
      <a href="/report/next">{say('page-report-next', {})}</a>
    </p>
  );
}

/** What the next season would be, or why there is none yet. */
async function nextUnlessOpen(c: Context<Environment>): Promise<NextSeason | ReportRefused> {
  try {
    return await nextSeason(c.var.group);
  } catch (error) {
    if (error instanceof ReportRefused && error.remark.code === 'next-not-closed') return error;
    throw error;
  }
}

/** The next season's page while the one in force is open: how to close it. */
function closeFirst(view: View, why: string) {
  const { say } = view;
  return (
    <Frame view={view} title={say('page-report-next', {})} answer={why} current="report" cautions={false}>
      <p>{say('page-report-next-what', {})}</p>
      <p>{say('page-report-next-close', {})}</p>
      <p>
        <a href={mayEdit(view) ? '/report#close' : '/report'}>
          {say(mayEdit(view) ? 'page-report-close' : 'page-report-season', {})}
        </a>
      </p>
    </Frame>
  );
}

async function nextPage(c: Context<Environment>) {
  const view = await viewOf(c);
  const { say } = view;
  const next = await nextUnlessOpen(c);
  if (next instanceof ReportRefused) return closeFirst(view, sayRefusalOnPage(view.language, next));
  return (
    <Frame
      view={view}
      title={say('page-report-next', {})}
      answer={say('page-report-next-answer', { season: next.after, due: next.due.length })}
      current="report"
    >
      <p>{say('page-report-next-what', {})}</p>
      <p>{say('next-carried', next.carried)}</p>
      <p>{say('next-left', next.left)}</p>
      {next.people.length === 0 ? null : (
        <p>{view.named(say('page-report-next-people', {}), next.people.join(', '))}</p>
      )}
      {next.due.length === 0 ? null : (
        <>
          <h2>{say('page-report-next-due', {})}</h2>
          <ul>
            {next.due.map((one) => (
              <li>{sayRemark(view.language, one)}</li>
            ))}
          </ul>
        </>
      )}
      <details>
        <summary>{say('page-report-next-text', {})}</summary>
        <pre>{next.text}</pre>
      </details>
      {mayEdit(view) ? (
        <form method="post" action="/report/next">
          <Csrf view={view} />
          <button type="submit">{say('page-report-next-do', { season: next.after })}</button>
        </form>
      ) : null}
    </Frame>
  );
}
