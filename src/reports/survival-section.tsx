import { raw } from 'hono/html';
import { forestChart } from '../charts/forest-chart.js';
import { Figures } from '../pages/parts/figure.js';
import type { Speech } from '../pages/speech.js';
import { talliedStages } from '../season/index.js';
import { type GroupSurvival, type Measure, measures, type Survival } from '../survival/index.js';
import { called, comparisonSentences, shareCell } from './sentences.js';

/** What is usually said of boxes (common practice, no source). */
const USUAL: readonly [number, number] = [0.7, 0.8];
/** More rows than this are a table's, not a picture's. */
const MOST_DRAWN = 24;

/** Survival box by box and together, and what the numbers can tell. */
export function SurvivalSection({ survival, speech }: { survival: Survival; speech: Speech }) {
  const { say, language } = speech;
  const sites = survival.groups.filter(
    ({ by, measure, found }) => by === 'site' && measure === 'out' && found !== null,
  );
  const rows = sites.flatMap(({ name, found }) =>
    found === null ? [] : [{ ...found, name: called(survival, 'site', name) }],
  );
  return (
    <>
      {rows.length > 0 && rows.length <= MOST_DRAWN ? (
        <figure>
          <figcaption>{say('report-survival-chart', {})}</figcaption>
          <section class="chart" tabindex={0} aria-label={say('report-survival-chart', {})}>
            {raw(forestChart({ language, title: say('report-survival-chart', {}), rows, usual: USUAL }))}
          </section>
          <p class="small">{say('report-survival-chart-common', {})}</p>
        </figure>
      ) : null}
      {survival.groups.some(({ by }) => by !== 'year') ? (
        <>
          <h3>{say('report-survival-groups', {})}</h3>
          <Groups survival={survival} speech={speech} />
        </>
      ) : null}
      <h3>{say('report-compare', {})}</h3>
      <Compared survival={survival} speech={speech} />
      {survival.boxes.length > 0 ? (
        <>
          <h3>{say('report-survival-boxes', {})}</h3>
          {survival.countingError === null ? null : (
            <p>{say('report-counting-error', { eggs: survival.countingError })}</p>
          )}
          <Boxes survival={survival} speech={speech} />
        </>
      ) : null}
      <h3>{say('report-years', {})}</h3>
      <Years survival={survival} speech={speech} />
    </>
  );
}

/** How far eggs came, as a heading says it. */
function measured({ say }: Speech, measure: Measure): string {
  return measure === 'out' ? say('report-measure-out', {}) : say('report-measure-stage', { stage: measure });
}

function Groups({ survival, speech }: { survival: Survival; speech: Speech }) {
  const { say } = speech;
  const shown = survival.groups.filter(({ by }) => by !== 'year');
  const name = ({ by, name }: GroupSurvival) =>
    by === 'all' ? say('report-by-all', {}) : say('report-group', { by, name: called(survival, by, name) });
  return (
    <Figures
      caption={say('report-survival-groups', {})}
      columns={[
        { name: say('report-col-group', {}) },
        { name: say('report-col-measure', {}) },
        { name: say('report-col-boxes', {}), number: true },
        { name: say('report-col-found', {}), pieces: true },
        { name: say('report-col-with-gone', {}), pieces: true },
        { name: say('report-col-of-fertilised', {}), pieces: true },
      ]}
      rows={shown
        .toSorted((a, b) => measures.indexOf(b.measure) - measures.indexOf(a.measure))
        .map((group) => [
          name(group),
          measured(speech, group.measure),
          speech.whole(group.found?.boxes ?? 0),
          shareCell(group.found, speech),
          group.gone === 0 || group.withGone === null ? '–' : say('report-share', group.withGone),
          group.ofFertilised === null ? '–' : say('report-share', group.ofFertilised),
        ])}
    />
  );
}

function Compared({ survival, speech }: { survival: Survival; speech: Speech }) {
  const sentences = comparisonSentences(survival, speech);
  if (sentences.length === 0) return <p>{speech.say('report-compare-none', {})}</p>;
  return (
    <ul>
      {sentences.map((sentence) => (
        <li>{sentence}</li>
      ))}
    </ul>
  );
}

function Boxes({ survival, speech }: { survival: Survival; speech: Speech }) {
  const { say } = speech;
  const number = (value: number | null) => (value === null ? '–' : speech.whole(value));
  const range = (reached: { readonly upper: number; readonly lower: number } | undefined, of: number) =>
    reached === undefined || of === 0
      ? '–'
      : say('report-stage-range', { lower: reached.lower / of, upper: reached.upper / of });
  return (
    <Figures
      caption={say('report-survival-boxes', {})}
      columns={[
        { name: say('column-box', {}) },
        { name: say('report-col-site', {}) },
        { name: say('report-col-lot', {}) },
        { name: say('report-col-planted', {}), number: true },
        { name: say('column-empty', {}), number: true },
        { name: say('column-dead', {}), number: true },
        { name: say('column-alive', {}), number: true },
        ...measures.map((measure) => ({ name: measured(speech, measure), pieces: true })),
        { name: say('report-col-of-fertilised', {}), pieces: true },
      ]}
      rows={survival.boxes.map(({ count, shares, ofFertilised }) => [
        count.part === null ? count.box : `${count.box} (${count.part})`,
        called(survival, 'site', count.site),
        count.lot ?? '–',
        speech.whole(count.of),
        number(count.empty),
        number(count.dead),
        number(count.alive),
        ...talliedStages.map((stage) => range(count.reached?.[stage], count.of)),
        count.gone ? say('report-box-gone', {}) : shares.out === null ? '–' : say('report-share', shares.out),
        ofFertilised === null ? '–' : say('report-share', ofFertilised),
      ])}
    />
  );
}

function Years({ survival, speech }: { survival: Survival; speech: Speech }) {
  const { say } = speech;
  if (survival.years.length < 2) return <p>{say('report-years-none', {})}</p>;
  const found = (season: string) =>
    survival.groups.find(({ by, name }) => by === 'year' && name === season)?.found ?? null;
  return (
    <Figures
      caption={say('report-years', {})}
      columns={[
        { name: say('report-col-season', {}) },
        { name: say('report-col-source', {}) },
        { name: say('report-col-boxes', {}), number: true },
        { name: say('report-measure-out', {}), pieces: true },
      ]}
      rows={survival.years.map(({ season, source, boxes }) => [
        season,
        say(`report-year-source-${source}`, {}),
        speech.whole(boxes.length),
        shareCell(found(season), speech),
      ])}
    />
  );
}
