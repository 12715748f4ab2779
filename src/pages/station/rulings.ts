import { type Context, Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { HttpRefused } from '../../http/refused.js';
import { acceptCorrection, overrule, verdictNamed, withdrawRuling } from '../../quality/index.js';

/** What the forms beside a finding post; back to the finding when it is done. */
export function rulingRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .post('/stations/:station/findings/:finding/ruling', async (c) => {
      const { group, person, form } = c.var;
      const { station, finding } = c.req.param();
      const verdict = verdictNamed(form.field('verdict'));
      if (verdict === null)
        throw new HttpRefused(422, { code: 'http-not-these-values', with: { places: ['verdict'] } });
      await overrule(
        group,
        station,
        finding,
        { verdict, reason: form.field('reason') },
        person.name,
        Date.now(),
      );
      return back(c, station, finding);
    })
    .post('/stations/:station/findings/:finding/ruling/withdraw', async (c) => {
      const { station, finding } = c.req.param();
      await withdrawRuling(c.var.group, station, finding, c.var.person.name);
      return back(c, station, finding);
    })
    .post('/stations/:station/findings/:finding/accept', async (c) => {
      const { station, finding } = c.req.param();
      await acceptCorrection(c.var.group, station, finding, c.var.person.name, Date.now());
      return back(c, station, 'checks');
    });
}

function back(c: Context<Environment>, station: string, place: string): Response {
  return c.redirect(`/stations/${encodeURIComponent(station)}#${encodeURIComponent(place)}`, 303);
}
