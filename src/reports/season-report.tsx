import { raw } from 'hono/html';
import type { Source } from '../../forecasting/index.js';
import { cautions } from '../group/forecast-answer.js';
import { outcomesAnswer } from '../lifting/index.js';
import { Figures } from '../pages/parts/figure.js';
import type { Speech } from '../pages/speech.js';
import { AT_FREEZING } from '../survival/index.js';
import { citedIn, decimal } from '../words/index.js';
import type { ReportFigures } from './figures.js';
import { MAP_HERE } from './marks.js';
import { besides, called, shortAnswer, someOf, tenths } from './sentences.js';
import { SiteWinters } from './site-winters.js';
import { SurvivalSection } from './survival-section.js';

interface Props {
  readonly figures: ReportFigures;
  readonly speech: Speech;
}

/** The season's report from what was done to the cautions. */
export function SeasonReport({ figures, speech }: Props) {
  const { say } = speech;
  return (
    <>
      <p class="answer">{shortAnswer(figures.survival, speech)}</p>
      {besides(figures.survival, speech).map((sentence) => (
        <p>{sentence}</p>
      ))}
      <Done figures={figures} speech={speech} />
      {raw(MAP_HERE)}
      <h2>{say('report-eggs', {})}</h2>
      <Lots figures={figures} speech={speech} />
      <h2>{say('report-winter', {})}</h2>
      <Winters figures={figures} speech={speech} />
      <SiteWinters figures={figures} speech={speech} />
      <h2>{say('report-windows', {})}</h2>
      <Windows figures={figures} speech={speech} />
      <h2>{say('report-spells', {})}</h2>
      <Spells figures={figures} speech={speech} />
      <h2>{say('report-lifting', {})}</h2>
      <Lifted figures={figures} speech={speech} />
      <h2>{say('report-survival', {})}</h2>
      <SurvivalSection survival={figures.survival} speech={speech} />
      <h2>{say('report-methods', {})}</h2>
      <Methods figures={figures} speech={speech} />
      <CautionList speech={speech} />
    </>
  );
}

export function CautionList({ speech }: { speech: Speech }) {
  return (
    <section class="cautions">
      <h2>{speech.say('page-cautions', {})}</h2>
      <ul>
        {cautions(speech.language).map((caution) => (
          <li>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

export function Done({ figures: { done }, speech: { say } }: Props) {
  const { hours, visitsWithHours, visits, people } = done;
  return (
    <>
      <h2>{say('report-done', {})}</h2>
      <p>{say('report-done-sentence', done)}</p>
      <p>
        {say('report-people', { people, visits })}{' '}
        {visits === 0
          ? ''
          : hours === null
            ? say('report-hours-none', {})
            : say('report-hours', { hours, visits: visitsWithHours, of: visits })}
      </p>
    </>
  );
}

const dayOf = (date: string) => Date.parse(`${date.slice(0, 10)}T00:00Z`) / 86_400_000;

/** A development table as people call it. */
function tableName(tables: ReportFigures['tables'], id: string, { language }: Speech): string {
  return tables.find((table) => table.id === id)?.name[language] ?? id;
}

function Lots({ figures: { lots, tables }, speech }: Props) {
  const { say } = speech;
  return (
    <Figures
      caption={say('report-eggs', {})}
      columns={[
        { name: say('report-col-lot', {}) },
        { name: say('report-col-fertilised', {}) },
        { name: say('report-col-parents', {}) },
        { name: say('report-col-eggs', {}), number: true },
        { name: say('report-col-planted', {}), number: true },
        { name: say('report-col-control', {}) },
        { name: say('column-table', {}) },
      ]}
      rows={lots.map((lot) => [
        lot.lot,
        speech.long(dayOf(lot.fertilised)),
        lot.parents.join(', ') || '–',
        speech.whole(lot.eggs),
        speech.whole(lot.planted),
        lot.control === null
          ? '–'
          : `${speech.whole(lot.control.fertilised)} / ${speech.whole(lot.control.of)} (${speech.percent(lot.control.fertilised / Math.max(1, lot.control.of))})`,
        tableName(tables, lot.table, speech),
      ])}
    />
  );
}

function Winters({ figures: { winters, spellsJudged, survival }, speech }: Props) {
  const { say } = speech;
  const number = (value: number | null) => (value === null ? '–' : speech.whole(value));
  const one = (value: number | null) => (value === null ? '–' : decimal(speech.language, value, 1));
  const judged = (value: number) => (spellsJudged ? speech.whole(value) : '–');
  return (
    <>
      <p>{say('report-winter-note', { freezing: AT_FREEZING })}</p>
      <Figures
        caption={say('report-winter', {})}
        columns={[
          { name: say('column-box', {}) },
          { name: say('report-col-site', {}) },
          { name: say('report-col-units', {}), number: true },
          { name: say('report-col-freezing', {}), number: true },
          { name: say('report-col-range', {}) },
          { name: say('report-col-days', {}) },
          { name: say('report-col-spells', {}), number: true },
          { name: say('report-col-exposures', {}), number: true },
          { name: say('report-col-gauge', {}), number: true },
          { name: say('report-col-silt', {}), number: true },
          { name: say('report-col-depth', {}), number: true },
        ]}
        rows={winters.map((winter) => [
          winter.box,
          called(survival, 'site', winter.site),
          number(winter.thermalUnits),
          number(winter.atFreezing),
          winter.lowest === null ? '–' : `${one(winter.lowest)} … ${one(winter.highest)}`,
          `${winter.days.measured} / ${winter.days.filled} / ${winter.days.projected}`,
          judged(winter.spells),
          judged(winter.exposures),
          judged(winter.gaugeEvents),
          tenths(winter.siltMm, speech),
          winter.depthM === null ? '–' : decimal(speech.language, winter.depthM, 2),
        ])}
      />
    </>
  );
}

function Windows({ figures: { rightness, stock, survival, tables }, speech }: Props) {
  const { say, language } = speech;
  const asOf = rightness.stages[0]?.stood.map((one) => one.asOf) ?? [];
  const cell = ({ p10, p50, p90 }: { p10: number | null; p50: number | null; p90: number | null }) =>
    p50 === null
      ? '–'
      : `${speech.short(p50)} (${p10 === null ? '…' : speech.short(p10)} – ${p90 === null ? '…' : speech.short(p90)})`;
  const seen = rightness.outcomes
    .filter(({ what }) => what === 'seen' || what === 'hatched')
    .slice(0, MOST_SEEN);
  const { outcomes } = outcomesAnswer(seen, language);
  const opened = openedBoxes(rightness.outcomes);
  return (
    <>
      <p>{say('report-windows-note', {})}</p>
      <Figures
        caption={say('report-windows', {})}
        columns={[
          { name: say('report-col-site', {}) },
          { name: say('report-col-lot', {}) },
          { name: say('column-stage', {}) },
          ...asOf.map((day) => ({ name: speech.short(day), pieces: true })),
          { name: say('report-col-record', {}) },
        ]}
        rows={rightness.stages.map(({ site, lot, stage, stood, byRecord }) => [
          called(survival, 'site', site),
          lot,
          speech.stage(stage),
          ...stood.map(cell),
          byRecord === null ? '–' : speech.short(byRecord),
        ])}
      />
      {rightness.scores.length === 0 ? (
        <p>{say('report-score-none', {})}</p>
      ) : (
        <ul>
          {rightness.scores.map(({ asOf: day, ...score }) => (
            <li>{say('report-score', { day, ...score })}</li>
          ))}
        </ul>
      )}
      <h3>{say('report-seen', {})}</h3>
      {rightness.outcomes.length === 0 ? <p>{say('report-seen-none', {})}</p> : null}
      <ul>
        {opened.map((sum) => (
          <li>{say('report-lifted-sum', sum)}</li>
        ))}
        {outcomes.map(({ found, said }) => (
          <li>
            {found}
            <ul>
              {said.map(({ inWords }) => (
                <li>{inWords}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      {stock.length === 0 ? <p>{say('report-stock-none', {})}</p> : null}
      {stock.map((one) => (
        <p>{say('report-stock', { ...one, table: tableName(tables, one.table, speech) })}</p>
      ))}
      <p class="small">{say('report-stock-lifting', {})}</p>
    </>
  );
}

/** Stages people saw are told one by one, up to so many. */
const MOST_SEEN = 20;

/** Boxes opened, lifted or put back, against each day's forecast: how many were as it had said. */
function openedBoxes(outcomes: ReportFigures['rightness']['outcomes']) {
  // Two people's counts of one box are one opening of it.
  const opened = new Map(
    outcomes
      .filter(({ what }) => what === 'left' || what === 'still')
      .map((one) => [`${one.box} ${one.day}`, one.said]),
  );
  const said = [...opened.values()].flat();
  const days = [...new Set(said.map(({ asOf }) => asOf))].sort((a, b) => a - b);
  const sums = days.map((day) => {
    const then = said.filter(({ asOf }) => asOf === day);
    const of = (verdict: (typeof then)[number]['verdict']) =>
      then.filter((one) => one.verdict === verdict).length;
    return {
      days: [day],
      boxes: then.length,
      within: of('outcome-agrees'),
      early: of('outcome-early'),
      late: of('outcome-late'),
    };
  });
  // Forecasts that had it alike are told in one sentence.
  const alike = new Map<string, (typeof sums)[number]>();
  for (const { days: on, ...sum } of sums) {
    const key = JSON.stringify(sum);
    alike.set(key, { ...sum, days: [...(alike.get(key)?.days ?? []), ...on] });
  }
  return [...alike.values()];
}

function Spells({ figures: { spells, spellsJudged, offset = 0 }, speech }: Props) {
  const { say } = speech;
  const day = (at: number) => Math.floor((at + offset * 60_000) / 86_400_000);
  if (!spellsJudged) return <p>{say('report-spells-not-judged', {})}</p>;
  const standing = spells.filter(({ state }) => state !== 'withdrawn');
  if (standing.length === 0) return <p>{say('report-spells-none', {})}</p>;
  return (
    <ul>
      {standing.map(({ kind, from, to, hours, peak, boxes, certainty, severity }) => (
        <li>
          {say('report-spell', {
            kind: say('report-kind', { kind }),
            certainty: say('report-certainty', { certainty }),
            severity: say('report-severity', { severity }),
            from: day(from),
            to: day(to),
            hours,
            peak,
            boxes,
          })}
        </li>
      ))}
    </ul>
  );
}

function Lifted({ figures: { lifting }, speech }: Props) {
  const { say } = speech;
  const days = [...new Set(lifting.lifted.map(({ day }) => day))].sort((a, b) => a - b);
  return (
    <>
      {lifting.approved === null ? null : (
        <p>
          {say('report-lifting-approved', {
            by: lifting.approved.by,
            days: lifting.approved.days.map(dayOf),
          })}
        </p>
      )}
      {days.length === 0 ? <p>{say('report-lifting-none', {})}</p> : null}
      <ul>
        {days.map((day) => (
          <li>
            {say('report-lifting-day', {
              day,
              ...someOf(lifting.lifted.filter((one) => one.day === day).map(({ box }) => box)),
            })}
          </li>
        ))}
      </ul>
      {lifting.out.length === 0 ? null : <p>{say('report-lifting-out', someOf(lifting.out))}</p>}
    </>
  );
}

function Methods({ figures: { method, tables }, speech }: Props) {
  const { say, language } = speech;
  const cited = (sources: readonly Source[]) => [
    ...new Set(
      sources.map((source) => {
        const cite = citedIn(language, source);
        return source.mark === undefined ? cite : `${cite} (${say(`mark-${source.mark}`, {})})`;
      }),
    ),
  ];
  return (
    <>
      <ul>
        <li>{say('report-method-version', { method })}</li>
        <li>{say('report-method-wilson', {})}</li>
        <li>{say('report-method-groups', {})}</li>
        <li>{say('report-method-compare', {})}</li>
        <li>{say('report-method-fertilised', {})}</li>
        <li>{say('report-method-windows', {})}</li>
      </ul>
      {tables.map((table) => (
        <>
          <h3>{say('report-method-sources', { table: table.name[language] })}</h3>
          <ul class="small">
            {cited([...table.sources, ...table.stages.flatMap(({ sources }) => sources)]).map((source) => (
              <li>{source}</li>
            ))}
          </ul>
        </>
      ))}
    </>
  );
}
