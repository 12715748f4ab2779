import type { SpellRow } from '../../spells/contract.js';
import { spellSentences } from '../../spells/sentences.js';
import type { View } from '../view.js';

/** Spells in a line each, with the way to all that is known of them. */
export function SpellList({ view, rows, zone }: { view: View; rows: readonly SpellRow[]; zone: string }) {
  return (
    <ul class="spell-list">
      {rows.map((row) => {
        const said = spellSentences(view.language, row, zone);
        return (
          <li class={row.severity}>
            <a href={`/spells#${encodeURIComponent(row.id)}`}>{said.title}</a>{' '}
            <span class="tag">{said.severity}</span> <span class="tag quiet">{said.state}</span>{' '}
            {row.boxes.slice(0, 8).join(', ')}
            {row.boxes.length > 8 ? ' …' : ''}, {said.from} – {said.to}
          </li>
        );
      })}
    </ul>
  );
}
