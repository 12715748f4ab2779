import type { Context } from 'hono';
import type { Environment } from '../../http/environment.js';
import { type MapWay, mapWays } from '../../reports/index.js';
import type { View } from '../view.js';

/** The season a page is asked for (`?season=2024-2025`); null: the one in force. */
export function seasonAsked(c: Context<Environment>): string | null {
  const given = c.req.query('season') ?? '';
  return given === '' ? null : given.slice(0, 40);
}

/** The map a report is asked for (`?map=coarse`); none where nothing known is asked for. */
export function mapAsked(c: Context<Environment>): MapWay {
  const given = c.req.query('map') ?? '';
  return mapWays.find((way) => way === given) ?? 'none';
}

interface ChoiceProps {
  readonly view: View;
  readonly there: { readonly closed: readonly string[]; readonly open: string | null };
  readonly season: string;
  readonly path: string;
}

/** Every season that can be looked at, as links. */
export function SeasonChoice({ view: { say }, there, season, path }: ChoiceProps) {
  if (there.closed.length === 0) return null;
  const link = (id: string, name: string) => (
    <li>
      <a href={`${path}?season=${encodeURIComponent(id)}`} aria-current={id === season ? 'page' : undefined}>
        {name}
      </a>
    </li>
  );
  return (
    <nav class="choose" aria-label={say('page-report-which', {})}>
      <ul class="links">
        {there.open === null ? null : link(there.open, say('page-report-current', { season: there.open }))}
        {there.closed.toReversed().map((id) => link(id, say('page-report-closed', { season: id })))}
      </ul>
    </nav>
  );
}
