import { OpenAPIHono } from '@hono/zod-openapi';
import type { Settings } from '../../settings/index.js';
import type { Environment } from '../environment.js';
import { accountRoutes } from './accounts.js';
import { calendarRoutes } from './calendars.js';
import { takeDocument } from './document.js';
import { earlierApiRoutes } from './earlier.js';
import { entryRoutes } from './entries.js';
import { fieldRoutes } from './field.js';
import { fileRoutes } from './files.js';
import { findingRoutes } from './findings.js';
import { forecastRoutes } from './forecast.js';
import { hindcastRoutes } from './hindcast.js';
import { keepingRoutes } from './keeping.js';
import { layoutRoutes } from './layouts.js';
import { liftingRoutes } from './lifting.js';
import { listsAsCsv } from './lists-as-csv.js';
import { loadRoutes } from './loads.js';
import { messageRoutes } from './messages.js';
import { referencePage } from './reference.js';
import { reportApiRoutes } from './report.js';
import { seasonRoutes } from './season.js';
import { spellRoutes } from './spells.js';
import { stationRoutes } from './stations.js';
import { tableRoutes } from './tables.js';
import { thingRoutes } from './things.js';
import { waitingFileRoutes } from './waiting-file.js';

const ABOUT = `Everything the pages and the command line can do. Dates are local dates of the group, instants ISO 8601
UTC, temperatures °C. Every date of a forecast is an estimate: never cross ice or wade high water to meet one; permits,
fish-health rules, the responsible biologist and the local authority decide. Sentences come in the language of
Accept-Language (en, fr). Errors are problem details (RFC 9457).`;

/** The API below /api/v1, with its own description. */
export function api(settings: Settings): OpenAPIHono<Environment> {
  const app = new OpenAPIHono<Environment>();
  app.use(takeDocument(settings));
  const parts = [
    forecastRoutes(),
    hindcastRoutes(),
    liftingRoutes(),
    spellRoutes(),
    reportApiRoutes(),
    stationRoutes(),
    findingRoutes(),
    fileRoutes(settings),
    waitingFileRoutes(),
    fieldRoutes(),
    earlierApiRoutes(),
    loadRoutes(),
    messageRoutes(),
    layoutRoutes(),
    seasonRoutes(),
    thingRoutes(),
    entryRoutes(),
    tableRoutes(),
    calendarRoutes(settings),
    accountRoutes(settings),
    keepingRoutes(),
    listsAsCsv(),
  ];
  for (const part of parts) app.route('/', part);
  app.openAPIRegistry.registerComponent('securitySchemes', 'token', {
    type: 'http',
    scheme: 'bearer',
    description: 'An API token with a role and an end date',
  });
  const description = {
    openapi: '3.1.0',
    info: {
      title: 'Underice',
      version: '1',
      description: ABOUT.replaceAll('\n', ' '),
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: '/api/v1' }],
    security: [{}, { token: [] }],
  };
  app.doc31('/openapi.json', description);
  app.get('/', (c) => referencePage(c, app.getOpenAPI31Document(description)));
  return app;
}
