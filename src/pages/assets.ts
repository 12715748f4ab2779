import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { Hono } from 'hono';
import type { Environment } from '../http/environment.js';

/** Where the build puts the style and the scripts of the pages; running from the sources it is in dist all the same. */
const folder =
  [new URL('./assets/', import.meta.url), new URL('../../dist/src/pages/assets/', import.meta.url)].find(
    (place) => existsSync(place),
  ) ?? null;

const types: Record<string, string> = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
};

interface Asset {
  readonly bytes: Buffer<ArrayBuffer>;
  readonly type: string;
  /** Changes with the bytes, so that a browser may keep them for good. */
  readonly mark: string;
}

const assets = new Map<string, Asset>();
for (const name of folder === null ? [] : readdirSync(folder)) {
  const type = types[name.split('.').at(-1) ?? ''];
  if (folder === null || type === undefined) continue;
  const bytes = Buffer.from(readFileSync(new URL(name, folder)));
  const mark = createHash('sha256').update(bytes).digest('base64url').slice(0, 10);
  assets.set(name, { bytes, type, mark });
}

/** The address of a style or script, as pages name it. */
export function assetAddress(name: string): string {
  const mark = assets.get(name)?.mark;
  return mark === undefined ? `/assets/${name}` : `/assets/${name}?v=${mark}`;
}

/** The text of a built script, for a page that serves it at an address of its own. */
export function assetText(name: string): string {
  return assets.get(name)?.bytes.toString('utf8') ?? '';
}

export function assetRoutes(): Hono<Environment> {
  return new Hono<Environment>().get('/assets/:name', (c) => {
    const asset = assets.get(c.req.param('name'));
    if (asset === undefined) return c.notFound();
    const forGood = c.req.query('v') === asset.mark;
    return c.body(asset.bytes, 200, {
      'Content-Type': asset.type,
      'Cache-Control': forGood ? 'public, max-age=31536000, immutable' : 'no-cache',
    });
  });
}
