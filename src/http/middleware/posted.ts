import { createMiddleware } from 'hono/factory';
import type { Settings } from '../../settings/index.js';
import type { Environment } from '../environment.js';
import { type Form, form, noForm } from '../received/form.js';
import { postedForm } from '../received/posted.js';
import type { Spool, SpooledFile } from '../received/spool.js';
import { unpacked } from '../received/unpack.js';
import { HttpRefused } from '../refused.js';
import { same } from '../sign-in/secrets.js';

/**
 * Not forms: the API reads its own bodies, the owner's door has a token of its own, and mail programs unsubscribe at one
 * press without ever having seen a page of ours (RFC 8058): the token in the address is the key.
 */
const NO_FORM = /^\/(api|owner|unsubscribe)\//;

/**
 * Forms are taken in here, once for every page, their csrf field checked. The API takes no form: what changes
 * something there needs a token, or a browser that says the request comes from our own page.
 */
export function takePosts(settings: Settings) {
  return createMiddleware<Environment>(async (c, next) => {
    c.set('form', noForm);
    const changes = !['GET', 'HEAD', 'OPTIONS'].includes(c.req.method);
    if (changes && c.req.path.startsWith('/api/')) refuseForeign(c.req.header.bind(c.req), c.var.person.by);
    if (changes && !NO_FORM.test(c.req.path)) {
      refuseCrossSite(c.req.header('Sec-Fetch-Site'));
      const posted = await postedForm({
        body: c.req.raw.body,
        contentType: c.req.header('Content-Type') ?? '',
        limits: settings,
        spool: c.var.spool,
        by: c.get('person')?.name ?? '-',
        allowed: (csrf) => same(csrf, c.var.csrf),
      });
      c.set('form', await withFilesUnpacked(posted, c.var.spool, settings));
    }
    await next();
  });
}

/** Archives come apart into their files and workbooks into a sheet, the first or the one the field `sheet` names. */
async function withFilesUnpacked(posted: Form, spool: Spool, settings: Settings): Promise<Form> {
  if (posted.files.length === 0) return posted;
  const files: SpooledFile[] = [];
  try {
    for (const file of posted.files)
      files.push(...(await unpacked(file, spool, settings, posted.field('sheet').trim() || null)));
  } catch (error) {
    for (const { id } of [...files, ...posted.files]) await spool.drop(id);
    throw error;
  }
  return form(posted.fields, files);
}

/** Browsers say which site a request comes from; one that comes from another is nobody's wish. */
function refuseCrossSite(site: string | undefined): void {
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    throw new HttpRefused(403, { code: 'http-forged', with: {} });
}

/**
 * A request with a cookie, or to an open service, may come from a page elsewhere: then the browser says so
 * (Sec-Fetch-Site, Origin). Programs say neither, and no page can send their content types without asking first.
 */
function refuseForeign(header: (name: string) => string | undefined, by: string): void {
  if (by === 'token') return;
  refuseCrossSite(header('Sec-Fetch-Site'));
  const origin = header('Origin');
  const host = header('Host');
  if (origin !== undefined && (!URL.canParse(origin) || new URL(origin).host !== host))
    throw new HttpRefused(403, { code: 'http-forged', with: {} });
  const type = header('Content-Type')?.split(';')[0]?.trim().toLowerCase() ?? '';
  if (['application/x-www-form-urlencoded', 'multipart/form-data', 'text/plain'].includes(type))
    throw new HttpRefused(415, {
      code: 'http-not-this-type',
      with: { given: type, takes: 'application/json, application/yaml, application/octet-stream' },
    });
}
