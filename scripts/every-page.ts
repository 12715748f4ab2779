/*
 * Every page of the service, for whoever looks at them all: axe (tests/pages/accessible.test.ts) and a person
 * (scripts/looks.ts). The addresses are those of the sample season with an earlier season closed in it.
 */

export const PAGES: readonly string[] = [
  '/',
  '/?sort=next',
  '/?as_of=2026-06-20',
  '/boxes/B1',
  '/boxes/F2',
  '/spells',
  '/boxes/B1/filled',
  '/stations',
  '/stations/upper',
  '/stations/bridge?from=2026-01-01&to=2026-01-20',
  '/downloads',
  '/downloads/layouts',
  '/messages',
  '/messages/mailbox',
  '/survival',
  '/report',
  '/report/funder',
  '/report?season=2024-2025&map=exact',
  '/report/funder?season=2024-2025',
  '/survival?season=2024-2025',
  '/report/permits',
  '/report/next',
  '/hindcast',
  '/lifting',
  '/lifting/outcome',
  '/lifting/sheets/2026-06-03/braid',
  '/tally',
  '/tally/B1',
  '/autumn',
  '/autumn/sites/upper-pool',
  '/autumn/grid?plan=yes',
  '/autumn/sheet',
  '/autumn/earlier',
  '/autumn/entries',
  '/autumn/enter/plant',
  '/autumn/enter/visit',
  '/autumn/enter/strip',
  '/autumn/enter/adult',
  '/autumn/enter/cross',
  '/autumn/enter/find',
  '/autumn/enter/check',
  '/autumn/enter/tally',
  '/autumn/grid',
  '/field',
  '/tables',
  '/tables?left=atlantic-salmon&right=brook-trout',
  '/tables/atlantic-salmon',
  '/editing',
  '/editing/boxes/3',
  '/editing/lots/new',
  '/editing/stations/0',
  '/editing/deployments/0',
  '/editing/loggers/new',
  '/editing/sites/0',
  '/editing/file',
  '/editing/history',
  '/first-visit',
  '/help',
  '/help/numbers',
  '/account',
  '/accounts',
  '/accounts/tokens',
  '/accounts/audit',
  '/calendars',
  '/keeping?check=now',
  '/sign-in',
  '/api/v1',
];

/** Of a folder with nothing in it yet. */
export const EMPTY_PAGES: readonly string[] = ['/first-visit', '/stations', '/downloads', '/editing'];

/** Refusals: their pages are read too. */
export const REFUSED: readonly string[] = [
  '/nowhere',
  '/boxes/nowhere',
  '/stations/nowhere',
  '/tables/nowhere',
];

/** Forms that come back with what is wrong. */
export const WRONG: readonly {
  readonly path: string;
  readonly fields: readonly (readonly [string, string])[];
}[] = [
  { path: '/editing/stations/0', fields: [['latitude', '147']] },
  { path: '/editing/file', fields: [['text', 'group: { name: X, zone: Mars }']] },
  {
    path: '/sign-in',
    fields: [
      ['name', 'Nobody'],
      ['password', 'guess-of-somebody'],
    ],
  },
];

/** Downloads that wait: understood with lines that cannot be used, with a question, refused. */
export const WAITING = {
  understood:
    'Date Time (UTC),Temperature (°C)\n2026-02-01 10:00,0.4\n2026-02-01 11:00,ERR\n2026-02-01 12:00,0.5\n',
  asked: 'Date Time (UTC),Temperature (°C)\n03/04/2025 10:00,4.0\n03/04/2025 11:00,4.1\n',
  refused: 'Dear coordinator,\nthe river is high today.\n',
} as const;
