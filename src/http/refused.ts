import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { HttpWords } from './words.js';

/** A request is refused: with which status, and in which sentence. */
export class HttpRefused extends Refusal {
  readonly exit = 2;
  constructor(
    readonly status: ContentfulStatusCode,
    readonly remark: Remark<HttpWords>,
    /** Header fields the answer carries, such as Retry-After. */
    readonly headers: Readonly<Record<string, string>> = {},
  ) {
    super(remark.code);
    this.name = 'HttpRefused';
  }
}
