import type { Context } from 'hono';
import type { DayNumber } from '../../forecasting/units.js';
import type { Environment } from '../http/environment.js';
import type { Role } from '../http/roles.js';
import type { Season } from '../season/index.js';
import { type Speech, speech } from './speech.js';

/** What every page is drawn with: who looks, in which language, at which group. */
export interface View extends Speech {
  /** Path and query of the page itself. */
  readonly here: string;
  readonly csrf: string;
  readonly nonce: string;
  readonly today: DayNumber;
  readonly group: string;
  readonly person: string;
  readonly role: Role;
  /** Nobody has an account: the service is open, on this machine only. */
  readonly open: boolean;
  /** The checks are still looking at earlier years of what was loaded. */
  readonly stillChecking: boolean;
}

export async function viewOf(c: Context<Environment>): Promise<View> {
  const { language, csrf, nonce, today, person } = c.var;
  const { pathname, search } = new URL(c.req.url);
  return {
    ...speech(language),
    here: `${pathname}${search}`,
    csrf,
    nonce,
    today,
    group: groupName(await c.var.group.season()),
    person: person.name,
    role: person.role,
    open: person.by === 'open',
    stillChecking: c.var.desk.stillChecking(),
  };
}

/** Before signing in: nothing of the group is shown. */
export function doorView(c: Context<Environment>, language = c.var.language): View {
  const { csrf, nonce } = c.var;
  const { pathname, search } = new URL(c.req.url);
  const here = `${pathname}${search}`;
  return {
    ...speech(language),
    here,
    csrf,
    nonce,
    today: 0,
    group: '',
    person: '',
    role: 'reader',
    open: false,
    stillChecking: false,
  };
}

/** The group's name; empty before a season says it. */
export function groupName(season: Season): string {
  return season.group.name === '-' ? '' : season.group.name;
}

/** May the person change the season, or at least add downloads and observations? */
export const mayEdit = ({ role }: View): boolean => role === 'coordinator';
export const mayAdd = ({ role }: View): boolean => role !== 'reader';
