import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { addressOf, NetworkFailed } from '../network/index.js';
import { languages } from '../words/format.js';
import { MessagesRefused } from './refused.js';

/** What a person may choose to be told of; the weekly summary is chosen by its day. */
export const subjects = ['spells', 'windows', 'stages', 'lifting', 'silence'] as const;
export type Subject = (typeof subjects)[number];

const hour = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);
/** One address, nothing that could begin a header or a second one. */
const email = z
  .string()
  .trim()
  .max(254)
  .regex(/^[^\s<>()[\],;:"\\@\p{C}]+@[^\s<>()[\],;:"\\@\p{C}]+$/u);

/** What may be stated of a person. */
export const statedSchema = z.object({
  name: z
    .string()
    .trim()
    .min(1)
    .max(80)
    .regex(/^[^\p{C}]+$/u),
  language: z.enum(languages),
  email: email.nullable().default(null),
  webhook: z.string().trim().max(2000).nullable().default(null),
  /** 1 Monday to 7 Sunday; null: no summary. */
  weekly: z.number().int().min(1).max(7).nullable().default(null),
  /** Hours of the group's zone in which what can wait waits; null: none. */
  quiet: z.object({ from: hour, to: hour }).nullable().default(null),
  subjects: z.array(z.enum(subjects)).default([...subjects]),
});
export type Stated = z.infer<typeof statedSchema>;

const personSchema = statedSchema.extend({
  id: z.string(),
  /** Signs what goes to the webhook. */
  secret: z.string(),
  /** Lets whoever holds the link unsubscribe. */
  token: z.string(),
  unsubscribed: z.number().nullable(),
});
export type Recipient = z.infer<typeof personSchema>;

const fileSchema = z.object({ format: z.literal(1), people: z.array(personSchema) });

const FILE = 'underice.people.json';

/**
 * Who is told what, in a file of its own beside the accounts that only its owner may read: a copy of the readings can be
 * handed on without anybody's address in it.
 */
export class Recipients {
  private people: readonly Recipient[];

  constructor(private readonly folder: string) {
    this.people = read(folder);
  }

  list(): readonly Recipient[] {
    return this.people;
  }

  /** Those to whom anything goes. */
  active(): readonly Recipient[] {
    return this.people.filter(({ unsubscribed }) => unsubscribed === null);
  }

  find(id: string): Recipient | null {
    return this.people.find((one) => one.id === id) ?? null;
  }

  ofToken(token: string): Recipient | null {
    return this.people.find((one) => one.token === token) ?? null;
  }

  /** @throws MessagesRefused where something stated will not do. */
  add(stated: unknown): Recipient {
    const person: Recipient = {
      ...checked(stated),
      id: randomBytes(6).toString('hex'),
      secret: randomBytes(32).toString('hex'),
      token: randomBytes(24).toString('base64url'),
      unsubscribed: null,
    };
    this.keep([...this.people, person]);
    return person;
  }

  /** Who is changed is subscribed again. @throws MessagesRefused */
  change(id: string, stated: unknown): Recipient {
    const before = this.known(id);
    const after = { ...before, ...checked(stated), unsubscribed: null };
    this.keep(this.people.map((one) => (one.id === id ? after : one)));
    return after;
  }

  remove(id: string): void {
    this.known(id);
    this.keep(this.people.filter((one) => one.id !== id));
  }

  unsubscribe(id: string, at: number): void {
    this.known(id);
    this.keep(this.people.map((one) => (one.id === id ? { ...one, unsubscribed: at } : one)));
  }

  private known(id: string): Recipient {
    const found = this.find(id);
    if (found === null) throw new MessagesRefused({ code: 'messages-unknown-person', with: {} });
    return found;
  }

  private keep(people: readonly Recipient[]): void {
    const path = join(this.folder, FILE);
    const fresh = `${path}.new`;
    const file = openSync(fresh, 'w', 0o600);
    try {
      writeSync(file, `${JSON.stringify({ format: 1, people }, null, 1)}\n`);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(fresh, path);
    this.people = people;
  }
}

function checked(stated: unknown): Stated {
  const found = statedSchema.safeParse(stated);
  if (!found.success) {
    const place = String(found.error.issues[0]?.path[0] ?? '');
    throw new MessagesRefused({ code: 'messages-bad-person', with: { place } });
  }
  if (found.data.webhook !== null) refuseBadWebhook(found.data.webhook);
  return found.data;
}

function refuseBadWebhook(url: string): void {
  try {
    addressOf(url);
  } catch (error) {
    if (!(error instanceof NetworkFailed)) throw error;
    throw new MessagesRefused({ code: 'messages-bad-person', with: { place: 'webhook' } });
  }
}

function read(folder: string): readonly Recipient[] {
  try {
    return fileSchema.parse(JSON.parse(readFileSync(join(folder, FILE), 'utf8'))).people;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    throw error;
  }
}
