import type { HindcastReport, HindcastResult } from '../../../forecasting/hindcast/index.js';
import { decimal, words } from '../../words/index.js';
import { Figures } from '../parts/figure.js';
import type { View } from '../view.js';
import { leadDay, type StationName } from './named.js';

/** The figures the command prints, one row a lead. */
export function Results({
  view,
  results,
  caption,
}: {
  view: View;
  results: readonly HindcastResult[];
  caption: string;
}) {
  const { language } = view;
  if (results.length === 0) return null;
  const days = (value: number | null | undefined) => (value == null ? '–' : decimal(language, value, 1));
  const column = (
    [
      'hindcast-column-n',
      'hindcast-column-error',
      'hindcast-column-bias',
      'hindcast-column-p90',
      'hindcast-column-holds',
      'hindcast-column-width',
      'hindcast-column-crps',
      'hindcast-plain-ensemble',
      'hindcast-plain-neighbour',
      'hindcast-plain-far-neighbour',
    ] as const
  ).map((code) => ({ name: words(language, code, {}), number: true }));
  return (
    <section>
      <h3>{caption}</h3>
      <Figures
        caption={caption}
        columns={[{ name: words(language, 'hindcast-column-lead', {}) }, ...column]}
        rows={results.map((of) => [
          view.short(leadDay(of.lead)),
          view.whole(of.n),
          days(of.mae),
          days(of.bias),
          days(of.p90),
          of.coverage80 === null ? '–' : view.percent(of.coverage80),
          days(of.width80),
          days(of.crps),
          days(of.reference.ensemble?.mae),
          days(of.reference.bestNeighbour?.mae),
          days(of.reference.bestNeighbourBeyond1km?.mae),
        ])}
      />
    </section>
  );
}

export function Gaps({ view, report: { gaps } }: { view: View; report: HindcastReport }) {
  const { language } = view;
  if (gaps.length === 0) return null;
  const degrees = (value: number | null) =>
    value === null || !Number.isFinite(value) ? '–' : decimal(language, value, 2);
  const column = (
    [
      'hindcast-column-n',
      'hindcast-column-error',
      'hindcast-column-holds',
      'hindcast-plain-line',
      'hindcast-plain-neighbour',
    ] as const
  ).map((code) => ({ name: words(language, code, {}), number: true }));
  return (
    <section>
      <h3>{words(language, 'hindcast-gaps', {})}</h3>
      <Figures
        caption={words(language, 'hindcast-gaps', {})}
        columns={[{ name: words(language, 'hindcast-column-days', {}), number: true }, ...column]}
        rows={gaps.map((of) => [
          view.whole(of.days),
          view.whole(of.n),
          degrees(of.rmse),
          Number.isFinite(of.coverage80) ? view.percent(of.coverage80) : '–',
          degrees(of.reference.line.rmse),
          degrees(of.reference.bestNeighbour.rmse),
        ])}
      />
    </section>
  );
}

interface NotesProps {
  readonly view: View;
  readonly report: HindcastReport;
  readonly stationName: StationName;
}

export function Notes({ view, report, stationName }: NotesProps) {
  const { language } = view;
  const notReached = report.results.reduce((sum, of) => sum + of.notReached, 0);
  const notes = report.notes.map(({ kind, station, winter }) =>
    kind === 'one-winter' && winter !== null
      ? words(language, 'hindcast-one-winter', { station: stationName(station), winter })
      : words(language, 'hindcast-no-whole-winter', { station: stationName(station) }),
  );
  if (notReached > 0) notes.unshift(words(language, 'hindcast-not-reached', { count: notReached }));
  return notes.length === 0 ? null : (
    <section>
      <h2>{view.say('page-hindcast-notes', {})}</h2>
      <ul>
        {notes.map((note) => (
          <li>{note}</li>
        ))}
      </ul>
    </section>
  );
}
