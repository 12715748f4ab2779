import { type Context, Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { viewOf } from '../view.js';
import { SpellsPage } from './page.js';

export function spellsRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/spells', async (c) => c.html(await spellsPage(c)))
    .post('/spells/:spell/acknowledge', (c) =>
      said(c, (id, note, who) => c.var.group.acknowledgeSpell(id, note, who)),
    )
    .post('/spells/:spell/settle', (c) =>
      said(c, (id, note, who) => {
        const how = c.var.form.field('how') === 'happened' ? 'happened' : 'did-not-happen';
        return c.var.group.settleExposure(id, how, note, who);
      }),
    );
}

/** Back to the spell when it is kept; with the sentence that says why where it was refused. */
async function said(
  c: Context<Environment>,
  keep: (id: string, note: string, who: string) => Promise<unknown>,
): Promise<Response> {
  const id = c.req.param('spell') ?? '';
  try {
    await keep(id, c.var.form.field('note'), c.var.person.name);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return c.html(await spellsPage(c, sayRefusalOnPage(c.var.language, error)), 422);
  }
  return c.redirect(`/spells#${encodeURIComponent(id)}`, 303);
}

async function spellsPage(c: Context<Environment>, refusal?: string) {
  const { group } = c.var;
  const rows = await group.spells({ box: null, since: null });
  return (
    <SpellsPage
      view={await viewOf(c)}
      rows={rows}
      season={await group.season()}
      {...(refusal === undefined ? {} : { refusal })}
    />
  );
}
