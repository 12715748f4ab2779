import { type Context, Hono } from 'hono';
import { z } from 'zod';
import type { Environment } from '../../http/environment.js';
import { HttpRefused } from '../../http/refused.js';
import { CHART_ID, type Letter, letterSchema, pictureOf } from '../../messages/index.js';
import type { StoredMessage } from '../../store/index.js';
import { isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { doorView, viewOf } from '../view.js';
import { LetterPage, MailboxPage, UnsubscribePage } from './letters.js';
import { deliveryRows, feedLines } from './lists.js';
import { MessagesPage } from './page.js';
import { statedIn } from './stated.js';

/** How many messages the list and the mailbox show. */
const SHOWN = 200;
const MAILS = 40;

/** Messages and feeds; a message's own page and the one to unsubscribe need no sign-in, their addresses are the keys. */
export function messagesRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/messages', async (c) => c.html(await page(c)))
    .post('/messages/people', (c) =>
      changed(c, async ({ desk, form }) => {
        desk.recipients.add(statedIn(form));
        desk.wake();
      }),
    )
    .post('/messages/people/:id', (c) =>
      changed(c, async ({ desk, form }) => {
        desk.recipients.change(c.req.param('id'), statedIn(form));
      }),
    )
    .post('/messages/people/:id/remove', (c) =>
      changed(c, async ({ desk }) => {
        desk.recipients.remove(c.req.param('id'));
        await desk.outbox.leave(c.req.param('id'), desk.now());
      }),
    )
    .post('/messages/people/:id/test', (c) =>
      changed(c, async ({ desk }) => {
        const person = desk.recipients.find(c.req.param('id'));
        if (person !== null) await desk.messages.test(person, desk.now());
        desk.wake();
      }),
    )
    .get('/messages/mailbox', async (c) => {
      const { desk, group } = c.var;
      if (!desk.mailbox)
        throw new HttpRefused(404, { code: 'http-not-found', with: { path: '/messages/mailbox' } });
      const season = await group.season();
      const mails = (await desk.outbox.messages(MAILS)).map(({ message }) => {
        const person = desk.recipients.find(message.person);
        return {
          id: message.id,
          at: message.at,
          to: person === null ? '–' : `${person.name} <${person.email ?? '–'}>`,
          from: season.group.name,
          letter: letterOf(message),
          seenBy: message.acknowledged?.by ?? null,
        };
      });
      return c.html(<MailboxPage view={await viewOf(c)} mails={mails} zone={season.group.zone} />);
    })
    .get('/letters/:id', async (c) => {
      const message = await messageAt(c);
      return c.html(letterPage(c, message, message.acknowledged?.by ?? null));
    })
    .post('/letters/:id', async (c) => {
      const message = await messageAt(c);
      const { desk } = c.var;
      const by = desk.recipients.find(message.person)?.name ?? '–';
      await desk.outbox.acknowledge(message.number, by, desk.now());
      for (const spell of spellsIn(message)) await c.var.group.acknowledgeSpell(spell, '', by);
      return c.html(letterPage(c, message, message.acknowledged?.by ?? by));
    })
    .get('/letters/:id/mail', async (c) => {
      const message = await messageAt(c);
      const { html } = letterOf(message);
      return c.html(html.replaceAll(`cid:${CHART_ID}`, `/letters/${message.id}/chart.png`));
    })
    .get('/letters/:id/chart.png', async (c) => {
      const { chart } = letterOf(await messageAt(c));
      if (chart === null)
        throw new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 100) } });
      return c.body(new Uint8Array(await pictureOf(chart)), 200, { 'Content-Type': 'image/png' });
    })
    .get('/unsubscribe/:token', (c) => {
      const token = c.req.param('token');
      const person = c.var.desk.recipients.ofToken(token);
      const done = person !== null && person.unsubscribed !== null;
      return c.html(
        <UnsubscribePage view={doorView(c)} name={person?.name ?? null} done={done} token={token} />,
      );
    })
    .post('/unsubscribe/:token', async (c) => {
      const { desk } = c.var;
      const token = c.req.param('token');
      const person = desk.recipients.ofToken(token);
      if (person !== null) {
        desk.recipients.unsubscribe(person.id, desk.now());
        await desk.outbox.leave(person.id, desk.now());
      }
      return c.html(
        <UnsubscribePage view={doorView(c)} name={person?.name ?? null} done={true} token={token} />,
      );
    });
}

async function page(c: Context<Environment>, refusal?: string) {
  const { desk, language } = c.var;
  const view = { ...(await viewOf(c)), here: '/messages' };
  const season = await c.var.group.season();
  return (
    <MessagesPage
      view={view}
      people={desk.recipients.list()}
      deliveries={deliveryRows(await desk.outbox.messages(SHOWN), desk.recipients, language)}
      feeds={feedLines(await desk.feeds.list(), language)}
      mailbox={desk.mailbox}
      mailServer={desk.from !== null}
      zone={season.group.zone}
      {...(refusal === undefined ? {} : { refusal })}
    />
  );
}

/** Does it and shows the page again; what is refused is said on it. */
async function changed(c: Context<Environment>, change: (asked: Environment['Variables']) => Promise<void>) {
  try {
    await change(c.var);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return c.html(await page(c, sayRefusalOnPage(c.var.language, error)), 422);
  }
  return c.redirect('/messages', 303);
}

async function messageAt(c: Context<Environment>): Promise<StoredMessage> {
  const id = c.req.param('id') ?? '';
  const found = await c.var.desk.outbox.messageOf(id);
  if (found === null) throw new HttpRefused(404, { code: 'http-not-found', with: { path: '/letters/…' } });
  return found;
}

function letterOf(message: StoredMessage): Letter {
  return letterSchema.parse(JSON.parse(message.content));
}

/** The spells a message tells of, each once: seen here, they are seen on the page of spells. */
function spellsIn(message: StoredMessage): readonly string[] {
  const told = letterOf(message).news.flatMap((one) => {
    const read = spellNewsSchema.safeParse(one);
    return read.success ? [read.data.spell.id] : [];
  });
  return [...new Set(told)];
}

const spellNewsSchema = z.object({ kind: z.literal('spell'), spell: z.object({ id: z.string() }) });

/** In the language the message was written in. */
function letterPage(c: Context<Environment>, message: StoredMessage, seenBy: string | null) {
  const letter = letterOf(message);
  return <LetterPage view={doorView(c, letter.language)} id={message.id} letter={letter} seenBy={seenBy} />;
}
