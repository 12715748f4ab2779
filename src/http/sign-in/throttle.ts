import { HttpRefused } from '../refused.js';

/** Wrong passwords in a row that cost nothing; each one after doubles the wait, to an hour (ours). */
const FREE = 5;
const LONGEST_SECONDS = 3600;
const FORGOTTEN_AFTER = 2 * 3_600_000;
const MOST_KEPT = 10_000;

/** Slows down whoever guesses passwords, by account and by address: neither alone would stop a guesser. */
export class Throttle {
  private readonly failures = new Map<string, { count: number; last: number }>();

  constructor(private readonly now: () => number) {}

  /** @throws HttpRefused 429 with Retry-After while one of the keys has to wait. */
  check(keys: readonly string[]): void {
    const wait = Math.max(...keys.map((key) => this.wait(key)));
    if (wait <= 0) return;
    const seconds = Math.ceil(wait / 1000);
    throw new HttpRefused(
      429,
      { code: 'http-slow-down', with: { seconds } },
      { 'Retry-After': String(seconds) },
    );
  }

  failed(keys: readonly string[]): void {
    this.forget();
    for (const key of keys) {
      this.failures.set(key, { count: (this.failures.get(key)?.count ?? 0) + 1, last: this.now() });
    }
  }

  succeeded(keys: readonly string[]): void {
    for (const key of keys) this.failures.delete(key);
  }

  private wait(key: string): number {
    const failed = this.failures.get(key);
    if (failed === undefined || failed.count < FREE) return 0;
    const seconds = Math.min(LONGEST_SECONDS, 2 ** (failed.count - FREE + 1));
    return failed.last + seconds * 1000 - this.now();
  }

  private forget(): void {
    const old = this.now() - FORGOTTEN_AFTER;
    for (const [key, { last }] of this.failures) {
      if (last < old || this.failures.size > MOST_KEPT) this.failures.delete(key);
    }
  }
}
