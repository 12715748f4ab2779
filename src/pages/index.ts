import { Hono } from 'hono';
import type { Environment } from '../http/environment.js';
import { assetRoutes } from './assets.js';
import { boxRoutes } from './box/routes.js';
import { downloadRoutes } from './downloads/routes.js';
import { seasonRoutes } from './season/routes.js';

/** Every page and every form of the service. */
export function pages(): Hono<Environment> {
  const app = new Hono<Environment>();
  for (const part of [assetRoutes(), seasonRoutes(), boxRoutes(), downloadRoutes()]) app.route('/', part);
  return app;
}
