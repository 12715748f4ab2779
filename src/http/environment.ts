import type { HttpBindings } from '@hono/node-server';
import type { DayNumber } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';
import type { Settings, SettingsInForce } from '../settings/index.js';
import type { Language } from '../words/index.js';
import type { Desk } from './desk.js';
import type { Form } from './received/form.js';
import type { Spool } from './received/spool.js';
import type { Person } from './roles.js';
import type { Accounts } from './sign-in/accounts.js';

/** What every page and every route of the API may count on: set by the middleware of app.ts. */
export type Environment = {
  Bindings: HttpBindings;
  Variables: {
    group: Group;
    /** The person's choice, else what the browser prefers. */
    language: Language;
    person: Person;
    /** Value of the hidden field `csrf` that every form carries. */
    csrf: string;
    /** Of this answer's Content-Security-Policy: a script element without it does not run. */
    nonce: string;
    /** Scheme and host under which people reach the service: for links that leave it. */
    base: string;
    /** Today in the group's zone; in the demo, the day it is shown at. */
    today: DayNumber;
    /** What a form posted, fields and files, its `csrf` checked; empty on GET. */
    form: Form;
    /** Files received and not yet accepted. */
    spool: Spool;
    accounts: Accounts;
    /** Messages and feeds. */
    desk: Desk;
    /** In force, and where each came from, where that was said. */
    settings: { readonly settings: Settings; readonly origins: SettingsInForce['origins'] | null };
  };
};
