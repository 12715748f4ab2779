import { Hono } from 'hono';
import type { Environment } from '../http/environment.js';
import { assetRoutes } from './assets.js';
import { earlierRoutes } from './autumn/earlier.js';
import { autumnRoutes } from './autumn/routes.js';
import { boxRoutes } from './box/routes.js';
import { calendarPages } from './calendars/routes.js';
import { downloadRoutes } from './downloads/routes.js';
import { editingRoutes } from './editing/routes.js';
import { fieldPages } from './field/routes.js';
import { firstVisitRoutes } from './first-visit/routes.js';
import { helpRoutes } from './help/routes.js';
import { hindcastRoutes } from './hindcast/routes.js';
import { keepingPages } from './keeping/routes.js';
import { liftingRoutes } from './lifting/routes.js';
import { messagesRoutes } from './messages/routes.js';
import { peopleRoutes } from './people/routes.js';
import { reportRoutes } from './report/routes.js';
import { seasonRoutes } from './season/routes.js';
import { signInPages } from './sign-in/routes.js';
import { spellsRoutes } from './spells/routes.js';
import { stationRoutes } from './station/routes.js';

import { rulingRoutes } from './station/rulings.js';

import { survivalRoutes } from './survival/routes.js';

import { tableRoutes } from './tables/routes.js';
import { tallyRoutes } from './tally/routes.js';

/** Every page and every form of the service. */
export function pages(): Hono<Environment> {
  const app = new Hono<Environment>();
  const parts = [
    assetRoutes(),
    seasonRoutes(),
    boxRoutes(),
    stationRoutes(),
    rulingRoutes(),
    hindcastRoutes(),
    liftingRoutes(),
    spellsRoutes(),
    tallyRoutes(),
    survivalRoutes(),
    reportRoutes(),
    downloadRoutes(),
    messagesRoutes(),
    tableRoutes(),
    editingRoutes(),
    autumnRoutes(),
    earlierRoutes(),
    fieldPages(),
    firstVisitRoutes(),
    helpRoutes(),
    signInPages(),
    peopleRoutes(),
    calendarPages(),
    keepingPages(),
  ];
  for (const part of parts) app.route('/', part);
  return app;
}
