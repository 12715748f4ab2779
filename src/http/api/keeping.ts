import { createRoute, z } from '@hono/zod-openapi';
import { settingRows } from '../../settings/index.js';
import { isoDay, say, words } from '../../words/index.js';
import { backupSent, exportSent } from '../sent-copy.js';
import { answers, apiPart, refusals } from './routing.js';

const verified = z
  .object({
    whole: z.boolean(),
    loads: z.number().int(),
    readings: z.number().int(),
    seasons: z.number().int(),
    findings: z.array(z.string()).openapi({ description: 'What is not as it should be, in sentences' }),
  })
  .openapi('Verified');
const setting = z
  .object({
    setting: z.string(),
    value: z.unknown().openapi({ description: 'A secret that is stated shows as ***' }),
    from: z
      .string()
      .nullable()
      .openapi({ description: 'A flag, a variable, the settings file, or the usual' }),
    what: z.string(),
  })
  .openapi('Setting');
const file = (type: string, description: string) => ({
  content: { [type]: { schema: z.string().openapi({ format: 'binary' }) } },
  description,
});

const backupRoute = createRoute({
  method: 'get',
  path: '/backup',
  summary: 'Everything of the group in one file; `underice restore` makes a folder of it',
  responses: { 200: file('application/octet-stream', 'The backup'), ...refusals },
});
const exportRoute = createRoute({
  method: 'get',
  path: '/export.zip',
  summary: 'Everything in open formats (CSV, JSON, the season file); unpacked, `underice restore` reads it',
  responses: { 200: file('application/zip', 'The archive'), ...refusals },
});
const verifyRoute = createRoute({
  method: 'get',
  path: '/verify',
  summary: 'Check that nothing in the data folder is missing, changed or loose',
  responses: { 200: answers(verified, 'What was found'), ...refusals },
});
const settingsRoute = createRoute({
  method: 'get',
  path: '/settings',
  summary: 'Every setting in force, and where it came from',
  responses: { 200: answers(z.object({ settings: z.array(setting) }), 'The settings'), ...refusals },
});

/** Keeping a group's record: what `underice backup`, `export --all`, `verify` and `settings` do. */
export function keepingRoutes() {
  return apiPart()
    .openapi(backupRoute, async (c) => {
      const name = `underice-${isoDay(c.var.today)}.underice`;
      return c.body(await backupSent(c.var.group), 200, {
        'Content-Type': 'application/octet-stream',
        'Content-Disposition': `attachment; filename="${name}"`,
        'Cache-Control': 'no-store',
      });
    })
    .openapi(exportRoute, async (c) => {
      const name = `underice-${isoDay(c.var.today)}.zip`;
      return c.body(await exportSent(c.var.group), 200, {
        'Content-Type': 'application/zip',
        'Content-Disposition': `attachment; filename="${name}"`,
        'Cache-Control': 'no-store',
      });
    })
    .openapi(verifyRoute, async (c) => {
      const { loads, readings, seasons, findings } = await c.var.group.verify();
      const sentences = findings.map((finding) => say(c.var.language, finding));
      return c.json({ whole: findings.length === 0, loads, readings, seasons, findings: sentences }, 200);
    })
    .openapi(settingsRoute, (c) => {
      const { language, settings } = c.var;
      const rows = settingRows(settings).map(({ setting, value, origin }) => ({
        setting,
        value,
        from: origin === null ? null : words(language, 'settings-origin', origin),
        what: words(language, 'settings-what', { setting }),
      }));
      return c.json({ settings: rows }, 200);
    });
}
