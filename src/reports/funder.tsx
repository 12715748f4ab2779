import { raw } from 'hono/html';
import { forestChart } from '../charts/forest-chart.js';
import type { Speech } from '../pages/speech.js';
import type { Grouping } from '../survival/index.js';
import type { ReportFigures } from './figures.js';
import { CautionList } from './season-report.js';
import { besides, called, comparisonSentences, shortAnswer } from './sentences.js';

const MOST_SITES = 6;
/** The newest seasons, this one among them. */
const MOST_SEASONS = 4;
const MOST_SENTENCES = 3;
/** Letters of a sentence; the season's report has the names that are left. */
const ROOM_FOR_NAMES = 160;

/** A season on one page, for somebody who pays for it. */
export function FunderSummary({ figures, speech }: { figures: ReportFigures; speech: Speech }) {
  const { say, language } = speech;
  const { survival, done, rightness } = figures;
  const drawn = (of: Grouping) =>
    survival.groups.flatMap(({ by, measure, name, found }) =>
      by !== of || measure !== 'out' || found === null
        ? []
        : [{ ...found, name: called(survival, by, name) }],
    );
  const sites = drawn('site');
  const rows = [...sites.slice(0, MOST_SITES), ...drawn('year').slice(-MOST_SEASONS)];
  const score = rightness.scores[0];
  return (
    <>
      <p class="answer">{shortAnswer(survival, speech)}</p>
      <h2>{say('report-funder-did', {})}</h2>
      <p>{say('report-done-sentence', done)}</p>
      <p>
        {say('report-people', done)}{' '}
        {done.hours === null
          ? ''
          : say('report-hours', { hours: done.hours, visits: done.visitsWithHours, of: done.visits })}
      </p>
      <h2>{say('report-funder-came', {})}</h2>
      {rows.length === 0 ? null : (
        <figure>
          <figcaption>{say('report-survival-chart', {})}</figcaption>
          <section class="chart" tabindex={0} aria-label={say('report-survival-chart', {})}>
            {raw(forestChart({ language, title: say('report-survival-chart', {}), rows, usual: [0.7, 0.8] }))}
          </section>
          <p class="small">
            {say('report-survival-chart-common', {})}
            {sites.length > MOST_SITES
              ? ` ${say('report-funder-sites', { shown: MOST_SITES, of: sites.length })}`
              : ''}
          </p>
        </figure>
      )}
      {score === undefined ? null : (
        <p>{say('report-funder-windows', { error: score.error, day: score.asOf })}</p>
      )}
      <h2>{say('report-funder-honest', {})}</h2>
      <ul>
        {[
          ...besides(survival, speech),
          ...comparisonSentences(survival, speech, ROOM_FOR_NAMES).slice(0, MOST_SENTENCES),
        ].map((sentence) => (
          <li>{sentence}</li>
        ))}
      </ul>
      <CautionList speech={speech} />
    </>
  );
}
