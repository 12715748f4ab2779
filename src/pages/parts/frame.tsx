import { html, raw } from 'hono/html';
import type { Child } from 'hono/jsx';
import { assetAddress } from '../assets.js';
import type { View } from '../view.js';
import { allPlaces, type PlaceName, places } from './places.js';

interface FrameProps {
  readonly view: View;
  /** For the browser's tab and the heading. */
  readonly title: string;
  /** The answer, in words: the first thing read. */
  readonly answer?: string;
  readonly current?: PlaceName;
  readonly children?: Child;
  /** Client scripts, by name; pages read well without them. */
  readonly scripts?: readonly string[];
  readonly styles?: readonly string[];
  /** A page before signing in: no navigation, nobody to sign out. */
  readonly bare?: boolean;
  /** What was written in one language stays in it: there is no way to the other. */
  readonly oneLanguage?: boolean;
  /** Pages without a date or limit need no cautions. */
  readonly cautions?: boolean;
}

/** A whole page: head, navigation, the answer in a sentence, the content, the cautions. */
export function Frame(props: FrameProps) {
  const { view, title, answer, children, scripts = [], styles = [] } = props;
  const { say } = view;
  return html`<!doctype html>${(
    <html lang={view.language === 'fr' ? 'fr-CA' : 'en-CA'}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{`${title} · ${view.group || 'Underice'}`}</title>
        <link rel="icon" href={assetAddress('icon.svg')} type="image/svg+xml" />
        {['style.css', ...styles].map((name) => (
          <link rel="stylesheet" href={assetAddress(name)} />
        ))}
        {scripts.map((name) => (
          <script type="module" src={assetAddress(name)}></script>
        ))}
      </head>
      <body>
        <a class="skip" href="#main">
          {say('page-skip', {})}
        </a>
        {props.bare === true ? (
          <header class="bar bare">
            {props.oneLanguage === true ? null : <OtherLanguage view={view} />}
          </header>
        ) : (
          <Bar view={view} current={props.current} />
        )}
        <main id="main">
          <h1>{title}</h1>
          {answer === undefined ? null : <p class="answer">{answer}</p>}
          {view.stillChecking && props.cautions !== false ? (
            <p class="small" role="status">
              {say('quality-still-looking', {})}
            </p>
          ) : null}
          {children}
        </main>
        <footer>
          {props.cautions === false ? null : <Cautions view={view} />}
          {props.bare === true ? null : (
            <p class="small">
              <a href="/calendars">{say('page-calendars-link', {})}</a>
              {view.role === 'coordinator' ? (
                <>
                  {' · '}
                  <a href="/accounts">{say('page-people-link', {})}</a>
                  {' · '}
                  <a href="/keeping">{say('page-keeping-link', {})}</a>
                </>
              ) : null}
            </p>
          )}
          {props.bare === true ? null : view.open ? (
            <p class="small">{say('page-open', {})}</p>
          ) : (
            <p class="small">
              <a href="/account">{say('page-signed-in', { name: view.person })}</a>
            </p>
          )}
          {view.open || props.bare === true ? null : (
            <form method="post" action="/sign-out">
              <Csrf view={view} />
              <button type="submit" class="quiet">
                {say('page-sign-out', {})}
              </button>
            </form>
          )}
        </footer>
      </body>
    </html>
  )}`;
}

function OtherLanguage({ view }: { view: View }) {
  const other = view.language === 'en' ? 'fr' : 'en';
  return (
    <a
      class="language"
      lang={other === 'fr' ? 'fr-CA' : 'en-CA'}
      hreflang={other}
      href={`/language/${other}?to=${encodeURIComponent(view.here)}`}
    >
      {other === 'fr' ? 'Fr' : 'En'}
      <span>{other === 'fr' ? 'ançais' : 'glish'}</span>
    </a>
  );
}

function Bar({ view, current }: { view: View; current: PlaceName | undefined }) {
  return (
    <header class="bar">
      <nav aria-label={view.say('page-menu', {})}>
        <button type="button" class="menu" popovertarget="places">
          <span aria-hidden="true">☰</span> {view.say('page-menu', {})}
        </button>
        <span class="here">{current === undefined ? null : view.say(places[current].word, {})}</span>
        <ul id="places" popover="auto">
          {allPlaces.map(([place, { href, word }]) => (
            <li>
              <a href={href} aria-current={place === current ? 'page' : undefined}>
                {view.say(word, {})}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <OtherLanguage view={view} />
    </header>
  );
}

/** They belong wherever a date or a limit is shown. */
export function Cautions({ view: { say } }: { view: View }) {
  return (
    <aside class="cautions" aria-labelledby="cautions">
      <h2 id="cautions">{say('page-cautions', {})}</h2>
      <ul>
        <li>{say('caution-estimate', {})}</li>
        <li>{say('caution-ice', {})}</li>
        <li>{say('caution-decide', {})}</li>
      </ul>
    </aside>
  );
}

/** Every form carries it. */
export function Csrf({ view }: { view: View }) {
  return <input type="hidden" name="csrf" value={view.csrf} />;
}

interface SameProps {
  readonly view: View;
  readonly json: string;
  readonly csv?: string;
}

/** The same figures for other programs. */
export function SameAs({ view: { say }, json, csv }: SameProps) {
  return (
    <p class="same">
      <a href={json}>{say('page-same-json', {})}</a>
      {csv === undefined ? null : <a href={csv}>{say('page-same-csv', {})}</a>}
    </p>
  );
}

/** A link from a figure to how it came about. */
export function WorkedOut({ view: { say }, about }: { view: View; about: string }) {
  return (
    <a class="worked-out" href={`/help/numbers#${about}`}>
      {say('page-worked-out', {})}
    </a>
  );
}

/** Markup made here, by our own chart code, and never from a person's text unescaped. */
export function Drawn({ svg }: { svg: string }) {
  return <div class="chart">{raw(svg)}</div>;
}
