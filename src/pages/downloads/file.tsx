import { recordChart, type Stretch } from '../../charts/index.js';
import type { Series } from '../../group/index.js';
import type { FileOutcome } from '../../loading/index.js';
import { nameIn, type Season } from '../../season/index.js';
import { decimal, list, say as sayIn } from '../../words/index.js';
import { ChartFigure } from '../parts/figure.js';
import { Csrf, Frame, WorkedOut } from '../parts/frame.js';
import { momentNames } from '../parts/moments.js';
import { mayAdd, mayEdit, type View } from '../view.js';
import { type Answers, askedFrom, FIELDS, mayMake } from './answers.js';
import { Everything, Question } from './ask.js';

/** A series the file brings, and what is there already over the same stretch. */
export interface Over {
  readonly brought: Series;
  readonly there: Stretch | null;
}

export interface FileProps {
  readonly view: View;
  /** The id it waits under. */
  readonly file: string;
  readonly outcome: FileOutcome;
  readonly answers: Answers;
  readonly over: readonly Over[];
  readonly season: Season;
}

const DAY = 86_400_000;

/** One file that waits: what was understood, what is there already, what must be answered; then accept or leave. */
export function FilePage(props: FileProps) {
  const { view, file, outcome, answers, over, season } = props;
  const { say } = view;
  const asks = {
    view,
    outcome,
    answers,
    stations: season.stations,
    zones: [...new Set([season.group.zone, ...season.stations.map(({ zone }) => zone)])],
  };
  const question = Question(asks);
  const ready = outcome.refused === null && !outcome.alreadyLoaded;
  return (
    <Frame
      view={view}
      title={say('page-file-title', { file: outcome.file })}
      answer={answerOf(props, question !== null)}
      current="downloads"
      cautions={false}
    >
      {outcome.refused === null ? null : question !== null ? (
        <form method="get" action={`/downloads/${file}`} class="sheet">
          <Said answers={answers} but={outcome.refused.question?.code ?? outcome.refused.reason.code} />
          {question}
          <div class="actions">
            <button type="submit">{say('page-file-again', {})}</button>
          </div>
        </form>
      ) : (
        <p class="refusal" role="alert">
          {sayIn(view.language, outcome.refused.reason)}
        </p>
      )}
      {ready && mayAdd(view) ? <Accept {...props} /> : null}
      {over.map((one) => (
        <OverChart view={view} season={season} {...one} />
      ))}
      <Findings view={view} outcome={outcome} season={season} />
      <p>
        <WorkedOut view={view} about="understood" />
      </p>
      <p class="same">
        <a href={apiOf(file, '', answers)}>{say('page-file-json', {})}</a>
        {over.length === 0 ? null : (
          <a href={apiOf(file, '/readings.csv', answers)}>{say('page-file-csv', {})}</a>
        )}
      </p>
      {outcome.understood === null ? null : (
        <details>
          <summary>{say('page-file-change', {})}</summary>
          <form method="get" action={`/downloads/${file}`}>
            <Everything {...asks} />
            <div class="actions">
              <button type="submit">{say('page-file-again', {})}</button>
            </div>
          </form>
        </details>
      )}
      {ready || !mayAdd(view) ? null : <Leave view={view} file={file} />}
    </Frame>
  );
}

/** The same through the API, with what a person said of the file. */
function apiOf(file: string, part: string, answers: Answers): string {
  const asked = new URLSearchParams();
  for (const [name, value] of Object.entries(askedFrom(answers)))
    if (value !== undefined) asked.set(name, value);
  if (mayMake(answers)) asked.set('createStations', 'true');
  return `/api/v1/files/${file}${part}${asked.size === 0 ? '' : `?${asked}`}`;
}

function answerOf({ view, outcome, season }: FileProps, asked: boolean): string {
  const { say } = view;
  if (outcome.refused !== null) return say(asked ? 'page-file-question' : 'page-file-refused', {});
  if (outcome.alreadyLoaded) return say('page-file-already', { load: String(outcome.load ?? '') });
  const { stations } = outcome;
  return say('page-file-ready', {
    readings: stations.reduce((sum, { readings }) => sum + readings, 0),
    stations: list(view.language, [...new Set(stations.map(({ station }) => named(season, station)))]),
    from: Math.min(...stations.map(({ first }) => first)) / DAY,
    to: Math.max(...stations.map(({ last }) => last)) / DAY,
  });
}

const named = (season: Season, station: string): string => nameIn(season.stations, station);

/** What was answered before, kept beside the next question; the field asked for now is not. */
function Said({ answers, but }: { answers: Answers; but: string }) {
  const asked: Record<string, readonly string[]> = {
    'which-column': ['column'],
    'which-date-order': ['dateOrder'],
    'which-zone': ['zone'],
    'unknown-zone': ['zone'],
    'which-unit': ['unit'],
    'no-station': ['station', 'newStation'],
    'station-not-in-season': ['station', 'newStation', 'create'],
  };
  return (
    <>
      {FIELDS.filter((field) => answers[field] !== '' && !asked[but]?.includes(field)).map((field) => (
        <input type="hidden" name={field} value={answers[field]} />
      ))}
    </>
  );
}

function Accept({ view, file, answers, outcome }: FileProps) {
  return (
    <>
      <div class="actions">
        <form method="post" action={`/downloads/${file}/accept`} id="accept">
          <Csrf view={view} />
          {FIELDS.filter((field) => answers[field] !== '').map((field) => (
            <input type="hidden" name={field} value={answers[field]} />
          ))}
          <button type="submit">{view.say('page-file-accept', {})}</button>
        </form>
        <Leave view={view} file={file} />
      </div>
      {mayEdit(view) && outcome.understood?.delimiter != null ? <KeepLayout view={view} /> : null}
    </>
  );
}

/** Not for a format that explains itself: next year's file asks nothing either. */
function KeepLayout({ view: { say } }: { view: View }) {
  return (
    <details>
      <summary>{say('page-file-keep-layout', {})}</summary>
      <label>
        {say('page-file-keep-layout-name', {})}
        <input name="layout" form="accept" maxlength={200} aria-describedby="layout-what" />
        <span class="small" id="layout-what">
          {say('page-file-keep-layout-what', {})}
        </span>
      </label>
    </details>
  );
}

function Leave({ view, file }: { view: View; file: string }) {
  return (
    <form method="post" action={`/downloads/${file}/leave`}>
      <Csrf view={view} />
      <button type="submit" class="quiet">
        {view.say('page-file-leave', {})}
      </button>
    </form>
  );
}

function OverChart({ view, season, brought, there }: Over & { view: View; season: Season }) {
  const { say, language } = view;
  const station = named(season, brought.station);
  const title = say('page-file-over', { station });
  const unit = { temperature: '°C', level: 'm', discharge: 'm³/s' }[brought.quantity];
  const every = Math.max(1, Math.ceil(brought.at.length / 40));
  const { zone } = season.group;
  const moment = momentNames(view, brought.at, every, zone);
  const rows = Array.from(brought.at, (at, i) => ({ at, mean: brought.mean[i] ?? Number.NaN }))
    .filter((_, i) => i % every === 0)
    .map(({ at, mean }) => [moment(at), decimal(language, mean, 2)]);
  return (
    <ChartFigure
      view={view}
      title={title}
      svg={recordChart({ language, title, unit, zone, there, brought })}
      note={say('page-file-over-key', {})}
      columns={[{ name: say('page-column-when', {}) }, { name: unit, number: true }]}
      rows={rows}
    />
  );
}

function Findings({ view, outcome, season }: Pick<FileProps, 'view' | 'outcome' | 'season'>) {
  const { say } = view;
  const { zone } = season.group;
  const { understood, assumed, unusable } = outcome;
  return (
    <>
      {outcome.differing === 0 ? null : (
        <p class="note">
          {say('page-file-differing', {
            count: outcome.differing,
            largest: decimal(view.language, outcome.largestDifference, 2),
          })}
        </p>
      )}
      {outcome.battery.map((one) => (
        <p>{say('battery-said', { ...one, station: named(season, one.station), zone })}</p>
      ))}
      {unusable.count === 0 ? null : (
        <section>
          <h2>{say('page-file-unusable', { count: unusable.count })}</h2>
          <ul>
            {unusable.examples.map(({ line, reason }) => (
              <li>{say('page-file-unusable-line', { line, reason: sayIn(view.language, reason) })}</li>
            ))}
          </ul>
        </section>
      )}
      {assumed.length === 0 ? null : (
        <section>
          <h2>{say('page-file-assumed', {})}</h2>
          <ul>
            {assumed.map((remark) => (
              <li>{sayIn(view.language, remark)}</li>
            ))}
          </ul>
        </section>
      )}
      {understood === null ? null : <Understood view={view} understood={understood} />}
    </>
  );
}

function Understood({
  view,
  understood,
}: {
  view: View;
  understood: NonNullable<FileOutcome['understood']>;
}) {
  const { say } = view;
  const { dateOrder, delimiter } = understood;
  const quoted = (text: string | null) => (text === null ? null : say('page-quoted', { text }));
  const facts: (readonly [string, string | null])[] = [
    [say('page-understood-value', {}), understood.valueColumn],
    [
      say('page-understood-unit', {}),
      understood.unit === null ? null : understood.unit === 'K' ? 'K' : `°${understood.unit}`,
    ],
    [say('page-understood-time', {}), understood.timeColumns.join(', ') || null],
    [say('page-understood-zone', {}), understood.zone],
    [say('page-understood-order', {}), dateOrder === null ? null : say(`page-order-${dateOrder}`, {})],
    [
      say('page-understood-delimiter', {}),
      delimiter === '\t' ? say('page-understood-tab', {}) : quoted(delimiter),
    ],
    [say('page-understood-decimal', {}), quoted(understood.decimal)],
    [say('page-understood-encoding', {}), understood.encoding],
  ];
  return (
    <section>
      <h2>{say('page-file-understood', {})}</h2>
      <table>
        <tbody>
          {facts.map(([name, value]) =>
            value === null ? null : (
              <tr>
                <th scope="row">{name}</th>
                <td>{value}</td>
              </tr>
            ),
          )}
        </tbody>
      </table>
    </section>
  );
}
