import type { StationFinding } from '../../group/index.js';
import { explained } from '../../quality/index.js';
import { type Season, verdicts } from '../../season/index.js';
import { Csrf, WorkedOut } from '../parts/frame.js';
import { mayEdit, type View } from '../view.js';

/** Findings shown on the page, the gravest first; the rest is in the JSON. */
const MOST_SHOWN = 40;

interface Props {
  readonly view: View;
  readonly season: Season;
  readonly station: string;
  readonly findings: readonly StationFinding[];
}

/** What the checks say of a record: each finding in words, its limit and source, what a person ruled or may rule. */
export function Checks({ view, season, station, findings }: Props) {
  const { say } = view;
  const open = (one: StationFinding) => one.ruling === null && one.flag >= 3;
  const shown = [...findings].sort((a, b) => rank(a) - rank(b) || b.from - a.from);
  const offered = findings.filter(({ offer, ruling }) => offer !== null && ruling === null).length;
  return (
    <section aria-labelledby="checks">
      <h2 id="checks">{say('quality-title', {})}</h2>
      <p>
        {findings.length === 0
          ? say('quality-none', {})
          : say('quality-answer', {
              doubted: findings.filter(open).length,
              ruled: findings.filter(({ ruling }) => ruling !== null).length,
              offered,
            })}{' '}
        {say('quality-kept', {})} <WorkedOut view={view} about="checks" />
      </p>
      {shown.slice(0, MOST_SHOWN).map((one) => (
        <OneFinding view={view} season={season} station={station} finding={one} />
      ))}
      {shown.length > MOST_SHOWN ? <p>{say('quality-more', { more: shown.length - MOST_SHOWN })}</p> : null}
      <Corrections view={view} season={season} station={station} />
      <p class="same">
        <a href={`/api/v1/stations/${encodeURIComponent(station)}/findings`}>
          {say('page-station-findings-json', {})}
        </a>
      </p>
    </section>
  );
}

/** What is not settled first: what fails, what is suspect, what is offered; then what is for information or ruled. */
function rank({ ruling, flag, offer }: StationFinding): number {
  if (ruling !== null) return 4;
  if (flag >= 3) return 4 - flag;
  return offer === null ? 3 : 2;
}

function OneFinding({
  view,
  season,
  station,
  finding,
}: Omit<Props, 'findings'> & { finding: StationFinding }) {
  const { say, language } = view;
  const { zone } = season.group;
  const { kind, from, to, flag, ruling, offer, logger, id } = finding;
  const at = `/stations/${encodeURIComponent(station)}/findings/${encodeURIComponent(id)}`;
  return (
    <article class={ruling === null ? 'sheet finding' : 'sheet finding done'} id={id}>
      <h3>
        {say(`check-${kind}`, {})} <span class="small">{say('quality-flag', { flag })}</span>
      </h3>
      <p class="small">{say('quality-span', { from, to, zone })}</p>
      <p>{explained(finding, language)}</p>
      <p class="small">{say(`check-source-${kind}`, {})}</p>
      {offer === null || ruling !== null ? null : (
        <p>
          {say('quality-offer', offer)} {logger === null ? say('quality-offer-no-logger', {}) : null}
        </p>
      )}
      {ruling === null ? null : (
        <p class="note">
          {say('quality-ruled', {
            verdict: ruling.verdict,
            by: ruling.by,
            at: Date.parse(ruling.at),
            zone,
            reason: ruling.reason,
          })}
        </p>
      )}
      {mayEdit(view) ? (
        <div class="actions">
          {offer === null || logger === null || ruling !== null ? null : (
            <form method="post" action={`${at}/accept`}>
              <Csrf view={view} />
              <button type="submit">{say('quality-offer-accept', {})}</button>
            </form>
          )}
          {ruling === null ? (
            kind === 'memory' ? null : (
              <Overrule view={view} action={`${at}/ruling`} id={id} />
            )
          ) : (
            <form method="post" action={`${at}/ruling/withdraw`}>
              <Csrf view={view} />
              <button type="submit" class="quiet">
                {say('quality-ruling-withdraw', {})}
              </button>
            </form>
          )}
        </div>
      ) : null}
    </article>
  );
}

function Overrule({ view, action, id }: { view: View; action: string; id: string }) {
  const { say } = view;
  return (
    <details>
      <summary>{say('quality-overrule', {})}</summary>
      <form method="post" action={action}>
        <Csrf view={view} />
        <fieldset>
          <legend>{say('quality-verdict', {})}</legend>
          {verdicts.map((verdict) => (
            <label class="choice">
              <input type="radio" name="verdict" value={verdict} checked={verdict === 'good'} />
              {say(`quality-verdict-${verdict}`, {})}
            </label>
          ))}
          <label for={`reason-${id}`}>{say('quality-reason', {})}</label>
          <input type="text" id={`reason-${id}`} name="reason" required maxlength={1000} />
        </fieldset>
        <button type="submit">{say('quality-overrule-save', {})}</button>
      </form>
    </details>
  );
}

/** Corrections that people accepted, with who and when. */
function Corrections({ view, season, station }: Omit<Props, 'findings'>) {
  const { say } = view;
  const { zone } = season.group;
  const accepted = season.deployments
    .filter((one) => one.station === station)
    .flatMap(({ logger, corrections }) => corrections.map((one) => ({ logger, ...one })));
  if (accepted.length === 0) return null;
  return (
    <>
      <h3>{say('quality-corrections', {})}</h3>
      <ul>
        {accepted.map(({ logger, quantity, add, course, by, at }) => (
          <li>
            {say('quality-correction', {
              logger,
              quantity,
              add: quantity === 'clock' ? add * 1000 : add,
              course,
              by,
              at: Date.parse(at),
              zone,
            })}
          </li>
        ))}
      </ul>
      {mayEdit(view) ? (
        <p>
          <a href="/editing">{say('quality-undo', {})}</a>
        </p>
      ) : null}
    </>
  );
}
