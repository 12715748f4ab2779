import type { Context } from 'hono';
import type { html } from 'hono/html';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Logger } from 'pino';
import { FieldRefused } from '../field/refused.js';
import { UnknownName } from '../group/unknown-name.js';

import { QualityRefused } from '../quality/refused.js';

import { ReportRefused } from '../reports/refused.js';

import { SeasonRefused } from '../season/index.js';
import { SpellRefused } from '../spells/refused.js';
import { StoreRefused } from '../store/index.js';
import { type Language, words } from '../words/index.js';
import { isRefusal, sayRefusal, sayRefusalOnPage } from '../words/refusals.js';
import type { Environment } from './environment.js';
import { newReference } from './middleware/log.js';
import { HttpRefused } from './refused.js';

/** An error as RFC 9457 has it; `detail` is the sentence, `code` the same in every language. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly code: string;
  /** Of a season that was refused: each thing wrong, and where. */
  readonly problems?: readonly {
    readonly line: number | null;
    readonly path: string;
    readonly code: string;
  }[];
}

/** What a page of the framework is. */
type ErrorPage = ReturnType<typeof html>;

/** Answers an error: a problem for programs, a page for people; what went wrong inside goes to the log only. */
export function answerError(log: Logger, page: (c: Context<Environment>, problem: Problem) => ErrorPage) {
  return (error: unknown, c: Context<Environment>): Response | Promise<Response> => {
    const problem = problemOf(
      error,
      c.get('language') ?? 'en',
      log,
      wantsPage(c) ? sayRefusalOnPage : sayRefusal,
    );
    const headers = error instanceof HttpRefused ? error.headers : {};
    for (const [name, value] of Object.entries(headers)) c.header(name, value);
    // What is left of a body that was refused is not read: the connection is of no use for another request.
    if (c.req.raw.body !== null) c.header('Connection', 'close');
    if (problem.status === 401) {
      if (problem.code === 'http-sign-in-first' && wantsPage(c))
        return c.redirect(`/sign-in?to=${encodeURIComponent(placeOf(c))}`, 303);
      c.header('WWW-Authenticate', 'Bearer realm="underice"');
    }
    if (wantsPage(c)) return c.html(page(c, problem), statusOf(problem.status));
    return sendProblem(c, problem);
  };
}

export function sendProblem(c: Context<Environment>, problem: Problem): Response {
  const status = statusOf(problem.status);
  return c.body(JSON.stringify(problem), status, { 'Content-Type': 'application/problem+json' });
}

function problemOf(error: unknown, language: Language, log: Logger, inWords: typeof sayRefusal): Problem {
  if (error instanceof HTTPException && error.status === 400)
    return problem(400, 'http-not-json', words(language, 'http-not-json', {}));
  if (!isRefusal(error)) {
    const reference = newReference();
    log.error({ err: error, reference }, 'failed');
    return problem(500, 'http-failed', words(language, 'http-failed', { reference }));
  }
  const made = problem(statusOfRefusal(error), error.remark.code, inWords(language, error));
  if (!(error instanceof SeasonRefused)) return made;
  const problems = error.remark.with.problems.map(({ line, path, code }) => ({
    line,
    path: path.join('.'),
    code,
  }));
  return { ...made, problems };
}

export function problem(status: number, code: string, detail: string): Problem {
  return { type: 'about:blank', title: TITLES[status] ?? 'Error', status, detail, code };
}

function statusOfRefusal(error: unknown): number {
  if (error instanceof HttpRefused) return error.status;
  if (error instanceof UnknownName) return NAME_STATUS[error.remark.code] ?? 404;
  if (error instanceof QualityRefused) return error.remark.code === 'quality-no-finding' ? 404 : 422;
  if (error instanceof SpellRefused) return error.remark.code === 'unknown-spell' ? 404 : 422;
  if (error instanceof FieldRefused) return FIELD_STATUS[error.remark.code] ?? 422;
  if (error instanceof StoreRefused) return STORE_STATUS[error.remark.code] ?? 503;
  if (error instanceof ReportRefused) return REPORT_STATUS[error.remark.code] ?? 422;
  return 422;
}

const REPORT_STATUS: Readonly<Record<string, number>> = {
  'close-unknown': 404,
  'close-twice': 409,
  'close-moved': 412,
  'next-not-closed': 409,
};

const NAME_STATUS: Readonly<Record<string, number>> = {
  'folder-taken': 409,
  'nothing-to-undo': 409,
  'season-moved': 412,
};

const FIELD_STATUS: Readonly<Record<string, number>> = {
  'field-no-such-entry': 404,
  'photo-none': 404,
  'photo-too-heavy': 413,
  'field-busy': 503,
};

const STORE_STATUS: Readonly<Record<string, number>> = {
  'unknown-load': 404,
  'folder-unknown-station': 404,
  'already-withdrawn': 409,
  'disk-full': 507,
};

/** Titles of the statuses as RFC 9110 names them: with type about:blank the title is the status's own. */
const TITLES: Readonly<Record<number, string>> = {
  400: 'Bad Request',
  401: 'Unauthorized',
  403: 'Forbidden',
  404: 'Not Found',
  405: 'Method Not Allowed',
  408: 'Request Timeout',
  409: 'Conflict',
  412: 'Precondition Failed',
  413: 'Content Too Large',
  415: 'Unsupported Media Type',
  421: 'Misdirected Request',
  422: 'Unprocessable Content',
  428: 'Precondition Required',
  429: 'Too Many Requests',
  500: 'Internal Server Error',
  503: 'Service Unavailable',
  507: 'Insufficient Storage',
};

export function statusOf(status: number): ContentfulStatusCode {
  const known = [400, 401, 403, 404, 405, 408, 409, 412, 413, 415, 421, 422, 428, 429, 503, 507] as const;
  return known.find((one) => one === status) ?? 500;
}

/** Whether a person asks, by a browser. */
export function wantsPage(c: Context<Environment>): boolean {
  return (
    !/^\/(api|owner|calendar)\//.test(c.req.path) && (c.req.header('Accept') ?? '').includes('text/html')
  );
}

function placeOf(c: Context<Environment>): string {
  const { pathname, search } = new URL(c.req.url);
  return c.req.method === 'GET' ? `${pathname}${search}` : '/';
}
