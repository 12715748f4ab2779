import type { Season } from '../season/index.js';
import { escaped } from './escaped.js';

/** How near the drawn places are to where they lie. */
export const mapWays = ['none', 'coarse', 'exact'] as const;
export type MapWay = (typeof mapWays)[number];

/** Coarse places are rounded to so much of a degree: about ten kilometres. */
const COARSE = 0.1;
const SIZE = 420;
const MARGIN = 40;
const LONGEST_NAME = 28;

/**
 * The season's sites with boxes (where it has none, all) from their coordinates, north above, no tiles from anywhere: an equirectangular drawing, true to scale along
 * the middle parallel. Null where no site states coordinates.
 */
export function siteMap(
  season: Pick<Season, 'sites' | 'stations' | 'boxes'>,
  way: 'coarse' | 'exact',
  title: string,
): string | null {
  const round = (degrees: number) => (way === 'exact' ? degrees : Math.round(degrees / COARSE) * COARSE);
  const places = new Map<string, { names: string[]; latitude: number; longitude: number }>();
  const planted = new Set(season.boxes.map(({ site }) => site));
  const shown = season.sites.filter(({ id }) => planted.size === 0 || planted.has(id));
  for (const site of shown) {
    const station = season.stations.find(({ id }) => id === site.station);
    const latitude = site.latitude ?? station?.latitude ?? null;
    const longitude = site.longitude ?? station?.longitude ?? null;
    if (latitude === null || longitude === null) continue;
    const at = { latitude: round(latitude), longitude: round(longitude) };
    const key = `${at.latitude.toFixed(5)} ${at.longitude.toFixed(5)}`;
    const known = places.get(key);
    if (known === undefined) places.set(key, { ...at, names: [site.name ?? site.id] });
    else known.names.push(site.name ?? site.id);
  }
  const all = [...places.values()];
  if (all.length === 0) return null;
  const span = (values: readonly number[]) => [Math.min(...values), Math.max(...values)];
  const [south, north] = span(all.map(({ latitude }) => latitude));
  const [west, east] = span(all.map(({ longitude }) => longitude));
  const narrower = Math.cos((((south + north) / 2) * Math.PI) / 180);
  const widest = Math.max((east - west) * narrower, north - south, way === 'coarse' ? COARSE : 0.002);
  const scale = (SIZE - 2 * MARGIN) / widest;
  const x = (longitude: number) => SIZE / 2 + (longitude - (west + east) / 2) * narrower * scale;
  const y = (latitude: number) => SIZE / 2 - (latitude - (south + north) / 2) * scale;
  const dots = all.map(({ names, latitude, longitude }) => {
    const [cx, cy] = [x(longitude), y(latitude)];
    const left = cx > SIZE / 2;
    const label = names.map(short).join(', ');
    return `<circle cx="${cx.toFixed(1)}" cy="${cy.toFixed(1)}" r="5" fill="var(--measured)"/><text x="${(cx + (left ? -9 : 9)).toFixed(1)}" y="${(cy + 4).toFixed(1)}" text-anchor="${left ? 'end' : 'start'}" fill="currentColor" font-size="12">${escaped(label)}</text>`;
  });
  const km = niceKilometres(widest * 111.2);
  const bar = (km / 111.2) * scale;
  const foot = `<path d="M ${MARGIN} ${SIZE - 14} h ${bar.toFixed(1)}" stroke="currentColor" stroke-width="2"/><text x="${MARGIN}" y="${SIZE - 20}" fill="currentColor" font-size="12">${km} km</text><text x="${SIZE - MARGIN}" y="24" fill="currentColor" font-size="14" text-anchor="middle">N ↑</text>`;
  return `<svg viewBox="0 0 ${SIZE} ${SIZE}" width="${SIZE}" role="img" class="map"><title>${escaped(title)}</title><rect x="1" y="1" width="${SIZE - 2}" height="${SIZE - 2}" fill="none" stroke="var(--line)"/>${dots.join('')}${foot}</svg>`;
}

function niceKilometres(across: number): number {
  const steps = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
  return steps.findLast((step) => step <= across / 3) ?? steps[0];
}

function short(name: string): string {
  const letters = [...name];
  return letters.length > LONGEST_NAME ? `${letters.slice(0, LONGEST_NAME - 1).join('')}…` : name;
}
