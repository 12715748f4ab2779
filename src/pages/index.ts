import { Hono } from 'hono';
import type { Environment } from '../http/environment.js';
import { assetRoutes } from './assets.js';
import { seasonRoutes } from './season/routes.js';

/** Every page and every form of the service. */
export function pages(): Hono<Environment> {
  const app = new Hono<Environment>();
  for (const part of [assetRoutes(), seasonRoutes()]) app.route('/', part);
  return app;
}
