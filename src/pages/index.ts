import { Hono } from 'hono';
import { forecastAnswer } from '../group/forecast-answer.js';
import type { Environment } from '../http/environment.js';

/** Every page of the service, mounted at the root. */
export function pages(): Hono<Environment> {
  const app = new Hono<Environment>();
  app.get('/', async (c) =>
    c.json(forecastAnswer(await c.var.group.forecast({ box: null, asOf: null }), c.var.language)),
  );
  return app;
}
