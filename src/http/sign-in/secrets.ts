import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';

/** A secret nobody guesses: 256 bits, safe in an address. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** What is kept of a secret: it has 256 bits already, so a plain hash does. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('base64url');
}

/** 128 bits that only the holder of the secret can make for this text. */
export function signed(secret: string, text: string): string {
  return createHmac('sha256', secret).update(text).digest().subarray(0, 16).toString('base64url');
}

export function same(one: string, other: string): boolean {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
}
