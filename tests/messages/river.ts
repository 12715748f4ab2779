import { afterEach } from 'vitest';
import type { JudgedSpell } from '../../forecasting/spells/spell.js';
import { openOwnGroup } from '../../src/group/index.js';
import type { LocalGroup } from '../../src/group/local.js';
import {
  type MailServer,
  Messages,
  Post,
  Recipients,
  type SpellHappening,
  sendEmail,
  sendWebhook,
  spellNews,
} from '../../src/messages/index.js';
import { deliveryRows } from '../../src/pages/messages/lists.js';
import { temporaryFolder } from '../store/temporary.js';

/** A morning in the group's zone, outside anybody's quiet hours. */
export const MORNING = Date.parse('2026-01-14T12:00Z');
export const TODAY = Math.floor(MORNING / 86_400_000);
export const MINUTE = 60_000;

const SEASON = `
group: { name: Tallowmere Brook Keepers, zone: America/Halifax }
stations: [{ id: pool, kind: stream, reports: true }]
sites: [{ id: bend, station: pool }]
lots: [{ id: A, fertilised: 2025-11-04 12:00, eggs: 6000, table: atlantic-salmon }]
boxes: [{ id: B1, site: bend, planted: 2025-11-04 18:00, fills: [{ lot: A, eggs: 1000 }] }]
`;

/** A lethal spell that was measured, unless told otherwise. */
export function spell(given: Partial<JudgedSpell> = {}): JudgedSpell {
  return {
    id: 'pool-freezing-1',
    kind: 'freezing',
    severity: 'lethal',
    certainty: 'measured',
    state: 'open',
    boxes: ['B1'],
    eggs: 1000,
    stages: ['eye-up', 'fertilised'],
    from: MORNING - 30 * 3_600_000,
    to: MORNING - 6 * 3_600_000,
    peak: -1.3,
    hours: 24,
    degreeHours: 18.2,
    chance: null,
    station: 'pool',
    origin: 'measured',
    limit: { value: -0.5, unit: 'celsius', hours: 0, sources: [{ cite: 'Ours, for this test' }] },
    touched: [
      { box: 'B1', lot: 'A', eggs: 1000, severity: 'lethal', stages: [{ stage: 'eye-up', chance: 0.9 }] },
    ],
    mortality: [],
    sign: null,
    ...given,
  };
}

export interface River {
  readonly group: LocalGroup;
  readonly recipients: Recipients;
  readonly messages: Messages;
  readonly post: Post;
  /** What the judging of spells says, in the order found. */
  readonly happened: SpellHappening[];
  /** Judges, writes and sends, as the service's round does. */
  round(at?: number): Promise<void>;
  /** The delivery list in English. */
  list(): Promise<ReturnType<typeof deliveryRows>>;
}

export interface RiverOptions {
  readonly mail?: Partial<MailServer> | null;
  readonly named?: readonly string[];
  readonly hours?: number;
  readonly hookSeconds?: number;
  /** Spells as the program judges them, not as the test says. */
  readonly judged?: boolean;
}

/** A group with one box, its people, a judge of spells that the test speaks for, and real deliveries. */
export async function river({
  mail = {},
  named = [],
  hours = 72,
  hookSeconds = 5,
  judged = false,
}: RiverOptions = {}): Promise<River> {
  const group = await openOwnGroup(temporaryFolder(), { now: () => MORNING });
  closing.push(() => group.close());
  await group.applySeason(SEASON, 'season.yaml', 'tests');
  const recipients = new Recipients(group.folder);
  const happened: SpellHappening[] = [];
  const failed = (error: unknown) => {
    throw error;
  };
  const messages = new Messages({
    group,
    outbox: group.outbox,
    recipients,
    sources: [
      spellNews(
        judged ? group : { spellEvents: async (after) => happened.filter(({ number }) => number > after) },
      ),
    ],
    mailbox: false,
    base: () => 'https://eggs.example.org',
    sign: (text) => Buffer.from(text).toString('base64url').slice(0, 60),
    domain: 'eggs.example.org',
    failed: (_, error) => failed(error),
  });
  const server: MailServer = {
    host: '127.0.0.1',
    port: 9,
    security: 'none',
    user: null,
    password: null,
    from: 'underice@eggs.example.org',
    seconds: 2,
    ...mail,
  };
  const post = new Post({
    outbox: group.outbox,
    recipients,
    hours,
    failed,
    ways: {
      email:
        mail === null
          ? null
          : ({ name, email }, letter) =>
              sendEmail(server, { name, email: email ?? '', group: 'Tallowmere Brook Keepers' }, letter),
      webhook: ({ webhook, secret }, letter, signal) =>
        sendWebhook(
          { url: webhook ?? '', secret, named, signal, seconds: hookSeconds },
          'Tallowmere Brook Keepers',
          letter,
          MORNING,
        ),
    },
  });
  return {
    group,
    recipients,
    messages,
    post,
    happened,
    round: async (at = MORNING) => {
      await messages.judge(TODAY, at);
      await messages.compose(TODAY, at);
      await post.round(at, new AbortController().signal);
    },
    list: async () => deliveryRows(await group.outbox.messages(1000), recipients, 'en'),
  };
}

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

/** A person with an e-mail address who wants to hear everything at once. */
export const person = (name: string, given: Readonly<Record<string, unknown>> = {}) => ({
  name,
  language: 'en',
  email: `${name.toLowerCase()}@example.org`,
  ...given,
});
