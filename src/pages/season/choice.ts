import type { BoxForecast } from '../../../forecasting/forecast.js';
import { byNextEvent, nextWindow } from './next-event.js';

/** What of a season is asked to be shown, and in which order. */
export interface Asked {
  readonly sort: 'site' | 'next';
  /** Letters of a box's or site's name; empty: all. */
  readonly find: string;
  /** The stage that comes next; empty: any. */
  readonly next: string;
  readonly any: boolean;
}

export function askedOf(query: (name: string) => string | undefined): Asked {
  const sort = query('sort') === 'next' ? 'next' : 'site';
  const [find, next] = [query('find')?.trim().slice(0, 100) ?? '', query('next')?.slice(0, 100) ?? ''];
  return { sort, find, next, any: sort === 'next' || find !== '' || next !== '' };
}

/** Boxes by site, or all in the order their next stage comes in. */
export function chosen(
  boxes: readonly BoxForecast[],
  names: ReadonlyMap<string, string>,
  asked: Asked,
): { site: string | null; boxes: BoxForecast[] }[] {
  const wanted = asked.find.toLocaleLowerCase();
  const name = ({ site }: BoxForecast) => names.get(site) ?? site;
  const found = boxes.filter(
    (box) =>
      `${box.box} ${name(box)}`.toLocaleLowerCase().includes(wanted) &&
      (asked.next === '' || nextWindow(box)?.stage === asked.next),
  );
  if (asked.sort === 'next') return [{ site: null, boxes: found.sort(byNextEvent) }];
  const sites = new Map<string, BoxForecast[]>();
  for (const box of found) sites.set(name(box), [...(sites.get(name(box)) ?? []), box]);
  return [...sites].map(([site, those]) => ({ site, boxes: those }));
}
