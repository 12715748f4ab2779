import { type Context, Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { approvePlan, dayOf, liftingState, outcomes, stateLifting } from '../../lifting/index.js';
import { isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { asOfAsked } from '../parts/as-of.js';
import { viewOf } from '../view.js';
import { OutcomePage } from './outcome.js';
import { LiftingPage } from './page.js';
import { ruleStated } from './rule-stated.js';
import { SheetPage } from './sheet.js';

export function liftingRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/lifting', async (c) => c.html(await liftingPage(c)))
    .get('/lifting/outcome', async (c) =>
      c.html(<OutcomePage view={await viewOf(c)} found={await outcomes(c.var.group)} />),
    )
    .get('/lifting/sheets/:date/:site', async (c) => {
      const { date, site } = c.req.param();
      const day = dayOf(date);
      const state = await liftingState(c.var.group, asOfAsked(c));
      if (Number.isNaN(day) || !state.season.sites.some(({ id }) => id === site)) return c.notFound();
      return c.html(<SheetPage view={await viewOf(c)} state={state} day={day} site={site} />);
    })
    .post('/lifting/approve', (c) =>
      changed(c, () => approvePlan(c.var.group, c.var.person.name, Date.now(), c.var.form.all('day'))),
    )
    .post('/lifting/rule', (c) =>
      changed(c, async () => {
        const stated = ruleStated(c.var.form);
        await stateLifting(c.var.group, stated, c.var.person.name);
      }),
    );
}

/** Back to the plan when it is done; with the sentence that says why where it was refused. */
async function changed(c: Context<Environment>, work: () => Promise<void>): Promise<Response> {
  try {
    await work();
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return c.html(await liftingPage(c, sayRefusalOnPage(c.var.language, error)), 422);
  }
  return c.redirect('/lifting', 303);
}

async function liftingPage(c: Context<Environment>, refusal?: string) {
  return (
    <LiftingPage
      view={await viewOf(c)}
      state={await liftingState(c.var.group, asOfAsked(c))}
      looksBack={asOfAsked(c) !== null}
      box={c.req.query('box') ?? null}
      {...(refusal === undefined ? {} : { refusal })}
    />
  );
}
