import { epochMillis, nameIn, type Season } from '../../season/index.js';
import type { SpellRow } from '../../spells/contract.js';
import { dayTimeOf } from '../../spells/days.js';
import { Frame, SameAs, WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';
import { OneSpell } from './one-spell.js';
import { Timeline } from './timeline.js';

interface SpellsProps {
  readonly view: View;
  readonly rows: readonly SpellRow[];
  readonly season: Season;
  readonly refusal?: string;
}

/** Everything that harmed, or may have harmed, eggs: open ones first, and what was, for ever. */
export function SpellsPage({ view, rows, season, refusal }: SpellsProps) {
  const { say } = view;
  const { zone } = season.group;
  const stationName = (station: string) => nameIn(season.stations, station);
  const open = rows.filter(({ state }) => state === 'open');
  const was = rows.filter(({ state }) => state !== 'open');
  const known = new Set(season.boxes.map(({ id }) => id));
  const gone = [...new Set(rows.flatMap(({ boxes }) => boxes.filter((box) => !known.has(box))))];
  const planted = season.boxes.flatMap(({ fills }) => fills.map((fill) => epochMillis(fill.planted)));
  const lethal = open.filter(({ severity }) => severity === 'lethal').length;
  return (
    <Frame
      view={view}
      title={say('page-spells-title', {})}
      answer={say('page-spells-answer', { open: open.length, lethal, kept: was.length })}
      current="spells"
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      <section>
        <h2>{say('page-spells-open', {})}</h2>
        {open.length === 0 ? <p>{say('page-spells-none-open', {})}</p> : null}
        {open.map((row) => (
          <OneSpell view={view} row={row} zone={zone} stationName={stationName} />
        ))}
      </section>
      <Timeline
        view={view}
        rows={rows}
        boxes={[...known, ...gone]}
        zone={zone}
        begin={planted.length === 0 ? view.today : dayTimeOf(Math.min(...planted), zone)}
      />
      <section>
        <h2>{say('page-spells-history', {})}</h2>
        {was.length === 0 ? <p>{say('page-spells-none', {})}</p> : null}
        {was.map((row) => (
          <OneSpell view={view} row={row} zone={zone} stationName={stationName} />
        ))}
      </section>
      <p class="small">
        {say('page-spells-plateau', {})} {say('page-spells-unmeasured', {})}
      </p>
      <p class="no-print">
        <WorkedOut view={view} about="spell" />
      </p>
      <SameAs view={view} json="/api/v1/spells" csv="/api/v1/spells.csv" />
    </Frame>
  );
}
