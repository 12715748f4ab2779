import { Hono } from 'hono';
import { ELSEWHERE, OTHER_HARM } from '../../../forecasting/other-harm.js';
import type { Environment } from '../../http/environment.js';
import { Frame } from '../parts/frame.js';
import { type View, viewOf } from '../view.js';
import { tradeWords } from './words-table.js';

export function helpRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/help', async (c) => c.html(<HelpPage view={await viewOf(c)} />))
    .get('/help/numbers', async (c) => c.html(<NumbersPage view={await viewOf(c)} />));
}

function HelpPage({ view }: { view: View }) {
  const { say } = view;
  return (
    <Frame view={view} title={say('page-help-title', {})} answer={say('page-help-answer', {})} current="help">
      <p class="same">
        <a href="/help/numbers">{say('page-help-numbers', {})}</a>
        <a href="/first-visit">{say('page-first-title', {})}</a>
        <a href="/api/v1">{say('page-help-api', {})}</a>
      </p>
      <h2>{say('page-help-words', {})}</h2>
      <p class="note">{say('page-help-words-note', {})}</p>
      <section class="scroll" tabindex={0} aria-label={say('page-help-words', {})}>
        <table class="glossary">
          <thead>
            <tr>
              <th scope="col">{say('page-help-word-en', {})}</th>
              <th scope="col">{say('page-help-word-fr', {})}</th>
              <th scope="col">{say('page-help-word-meaning', {})}</th>
            </tr>
          </thead>
          <tbody>
            {tradeWords.map(([en, fr, meaning]) => (
              <tr>
                <td lang="en-CA">{en}</td>
                <td lang="fr-CA">{fr}</td>
                <td>{say(meaning, {})}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Where view={view} />
    </Frame>
  );
}

/** Which faces work where. */
export function Where({ view: { say } }: { view: View }) {
  return (
    <section>
      <h2>{say('page-first-where', {})}</h2>
      <ul>
        <li>{say('page-first-where-laptop', {})}</li>
        <li>{say('page-first-where-server', {})}</li>
      </ul>
    </section>
  );
}

/** What "How was this worked out?" leads to: one heading a figure. */
const figures = [
  'window',
  'progress',
  'old-rule',
  'filled',
  'projected',
  'record',
  'understood',
  'checks',
  'spell',
  'lifting',
  'survival',
  'hindcast',
  'eggs',
  'tables',
  'cautions',
] as const;

function NumbersPage({ view }: { view: View }) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-help-numbers', {})}
      answer={say('page-help-numbers-answer', {})}
      current="help"
    >
      {figures.map((figure) => (
        <section>
          <h2 id={figure}>{say(`page-help-${figure}`, {})}</h2>
          <p>{say(`page-help-${figure}-text`, {})}</p>
        </section>
      ))}
      <section>
        <h2 id="other-harm">{say('page-help-other-harm', {})}</h2>
        <p>{say('page-help-other-harm-text', OTHER_HARM)}</p>
        <p>{say('page-help-elsewhere-text', ELSEWHERE)}</p>
      </section>
      <p>
        <a href="/tables">{say('page-tables-title', {})}</a>
      </p>
    </Frame>
  );
}
