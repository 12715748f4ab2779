import type { Group } from '../group/index.js';
import { UnknownName } from '../group/unknown-name.js';
import {
  type FieldEntry,
  momentAt,
  renderSeason,
  type Season,
  SeasonRefused,
  seasonDocument,
  seasonFrom,
  writtenMoment,
} from '../season/index.js';
import type { Batch, SentEntry } from './batch.js';
import { added, changed, type Document, isThing, sameId, stated, things } from './document.js';
import { Given } from './given.js';
import { type Around, entryKinds } from './kinds/index.js';
import { EntryWaits, FieldRefused } from './refused.js';

/** A phone's clock is believed to this many seconds: networks are slow. */
const CLOCK_TOLERANCE = 90;
/** A moment typed by hand may lie this many minutes ahead: watches differ. */
const AHEAD_MINUTES = 15;
/** Somebody else may change the season between reading and writing; tried again so many times. */
const TRIES = 8;

/** What became of an entry that was sent: part of the season, kept for a person to settle, or here before. */
export interface Receipt {
  readonly id: string;
  readonly state: 'taken' | 'waiting' | 'before';
  readonly became: string | null;
  /** Why it waits. */
  readonly refusal: EntryWaits | SeasonRefused | null;
}

/**
 * Takes in entries: each becomes part of the season once, whatever is sent again, or is kept word for word and waits
 * for a person. Two people's entries of the same thing are both kept. All of the batch stands when this resolves, or
 * nothing of it when it rejects.
 * @param now the service's clock, epoch ms
 * @param keepWaiting false at a desk, where the person can mend what is wrong at once: it is not kept then
 * @throws FieldRefused 'field-busy' where others change the season all the time
 */
export async function receiveEntries(
  group: Group,
  batch: Batch,
  who: string,
  now: number,
  keepWaiting = true,
): Promise<readonly Receipt[]> {
  return writing(group, who, (season) => {
    const fast = (Date.parse(batch.now) - now) / 1000;
    const off = Math.abs(fast) > CLOCK_TOLERANCE ? Math.round(fast) : 0;
    const { zone } = season.group;
    const enteredAt = (sent: SentEntry) => Math.min(Date.parse(sent.entered) - off * 1000, now);
    let document: Document = seasonDocument(season);
    const answer = inTurn(batch.entries, (sent) => {
      const step = taken(document, season, sent, sent.who || who, enteredAt(sent), now);
      document = step.document;
      return step.receipt;
    });
    for (const [i, { state, became }] of answer.entries()) {
      const sent = batch.entries[i];
      if (sent === undefined || state === 'before' || (state === 'waiting' && !keepWaiting)) continue;
      const note = stated({
        id: sent.id,
        kind: sent.kind,
        state,
        who: sent.who || (who === '-' ? '' : who),
        phone: batch.phone,
        entered: wall(enteredAt(sent), zone),
        received: wall(now, zone),
        fast: off === 0 ? undefined : off,
        became,
        fields: state === 'waiting' ? JSON.stringify(sent.fields) : undefined,
      });
      document = added(document, 'entries', note);
    }
    if (answer.some(({ state }) => state === 'taken')) document = nowTaken(document, season, now);
    return { document, answer };
  });
}

/** Takes entries one by one; what names a thing that another brings is taken after it, in whatever order they came. */
function inTurn(entries: readonly SentEntry[], take: (sent: SentEntry) => Receipt): Receipt[] {
  const first = new Map(entries.map(({ id }, i) => [id.toLowerCase(), i] as const).reverse());
  const receipts = entries.map(({ id }): Receipt => ({ id, state: 'before', became: null, refusal: null }));
  let left = entries.flatMap((sent, i) => (first.get(sent.id.toLowerCase()) === i ? [{ sent, i }] : []));
  for (let before = -1; left.length !== before; ) {
    before = left.length;
    left = left.filter(({ sent, i }) => {
      const receipt = take(sent);
      receipts[i] = receipt;
      return receipt.state === 'waiting' && namesNone(receipt.refusal);
    });
  }
  return receipts;
}

/** Entries that waited for a thing that was not there, such as a lot another phone had, and can be taken by now. */
function nowTaken(document: Document, season: Season, now: number): Document {
  let so = document;
  let waited = season.entries.filter(
    (entry) => entry.state === 'waiting' && namesNone(whyWaiting(season, entry, now)),
  );
  for (let before = -1; waited.length !== before; ) {
    before = waited.length;
    waited = waited.filter((entry) => {
      const without = { ...so, entries: things(so, 'entries').filter(({ id }) => id !== entry.id) };
      const sent = { id: entry.id, kind: entry.kind, entered: entry.entered, fields: fieldsOf(entry) };
      const step = taken(without, season, sent, entry.who ?? '-', Date.parse(entry.entered), now);
      if (step.receipt.state !== 'taken') return true;
      const change = { state: 'taken', became: step.receipt.became, fields: undefined };
      so = settled({ ...step.document, entries: so.entries }, entry.id, change);
      return false;
    });
  }
  return so;
}

/** Whether an entry waits only because it names a thing that is not there (yet). */
function namesNone(refusal: Receipt['refusal']): boolean {
  if (refusal instanceof SeasonRefused)
    return refusal.remark.with.problems.every(({ code }) => code === 'season.no-such');
  return refusal?.remark.code === 'field-box-unknown' || refusal?.remark.code === 'field-not-lying';
}

/** An entry that waits is taken after all (with other fields where given), or left: then it stays as it was sent. */
export async function settleEntry(
  group: Group,
  id: string,
  how: { readonly take: Readonly<Record<string, unknown>> | null } | 'leave',
  who: string,
  now: number,
): Promise<void> {
  await writing(group, who, (season) => {
    const entry = season.entries.find((one) => sameId(one.id, id));
    if (entry === undefined) throw new FieldRefused({ code: 'field-no-such-entry', with: { id } });
    if (entry.state !== 'waiting') throw new FieldRefused({ code: 'field-settled', with: { id } });
    const document = seasonDocument(season);
    if (how === 'leave') return { document: settled(document, id, { state: 'left' }), answer: undefined };
    const fields = how.take ?? fieldsOf(entry);
    const sent = { id, kind: entry.kind, entered: entry.entered, fields };
    const without = { ...document, entries: things(document, 'entries').filter((one) => one.id !== id) };
    const step = taken(without, season, sent, entry.who ?? '-', Date.parse(entry.entered), now);
    if (step.receipt.refusal !== null) throw step.receipt.refusal;
    const done = { ...step.document, entries: document.entries };
    const change = { state: 'taken', became: step.receipt.became, fields: undefined };
    return { document: settled(done, id, change), answer: undefined };
  });
}

/** Why an entry waits, as the season stands now; null where it could be taken by now. */
export function whyWaiting(season: Season, entry: FieldEntry, now: number): Receipt['refusal'] {
  const document = seasonDocument(season);
  const without = { ...document, entries: things(document, 'entries').filter(({ id }) => id !== entry.id) };
  const sent = { id: entry.id, kind: entry.kind, entered: entry.entered, fields: fieldsOf(entry) };
  return taken(without, season, sent, entry.who ?? '-', Date.parse(entry.entered), now).receipt.refusal;
}

export function fieldsOf(entry: FieldEntry): Document {
  const fields: unknown = JSON.parse(entry.fields ?? '{}');
  return isThing(fields) ? fields : {};
}

function settled(document: Document, id: string, change: Document): Document {
  return changed(
    document,
    'entries',
    (one) => one.id === id,
    (one) => stated({ ...one, ...change }),
  );
}

const wall = (at: number, zone: string) => writtenMoment(momentAt(at, zone), zone);

/** One entry put into the document, or the document as it was and why not. */
function taken(
  document: Document,
  season: Season,
  sent: SentEntry,
  who: string,
  entered: number,
  now: number,
): { readonly document: Document; readonly receipt: Receipt } {
  const { id, kind, fields } = sent;
  const said = { id, became: null, refusal: null };
  const before = things(document, 'entries').find((one) => sameId(one.id, id));
  if (before !== undefined) return { document, receipt: { ...said, state: 'before' } };
  const { zone } = season.group;
  const around: Around = {
    id,
    who,
    at: wall(entered, zone),
    when(typed) {
      const at = typed.replace('T', ' ');
      if (aheadOf(at, now, zone)) throw new EntryWaits({ code: 'field-future', with: { when: at } });
      return at;
    },
  };
  try {
    const known = entryKinds.find((one) => one.kind === kind);
    if (known === undefined) throw new EntryWaits({ code: 'field-unknown-kind', with: { kind } });
    const { document: after, became } = known.apply(document, new Given(fields), around);
    seasonFrom(after, 'season');
    return { document: after, receipt: { ...said, state: 'taken', became } };
  } catch (error) {
    if (error instanceof EntryWaits)
      return { document, receipt: { ...said, state: 'waiting', refusal: error } };
    if (!(error instanceof SeasonRefused)) throw error;
    const refusal = new SeasonRefused('season', error.remark.with.problems, { kind: 'field' });
    return { document, receipt: { ...said, state: 'waiting', refusal } };
  }
}

/** Whether a wall-clock moment lies ahead; one that is none is left for the season to refuse. */
function aheadOf(typed: string, now: number, zone: string): boolean {
  const latest = momentAt(now + AHEAD_MINUTES * 60_000, zone)
    .slice(0, 16)
    .replace('T', ' ');
  return /^\d{4}-\d{2}-\d{2}( \d{2}:\d{2})?/.test(typed) && typed.slice(0, 16) > latest;
}

/** Reads the season, changes its document and writes it, again where somebody else wrote in between. */
async function writing<Answer>(
  group: Group,
  who: string,
  edit: (season: Season) => { readonly document: Document; readonly answer: Answer },
): Promise<Answer> {
  for (let tries = 0; tries < TRIES; tries++) {
    const version = (await group.seasonVersions())[0]?.version ?? 0;
    const { document, answer } = edit(await group.season());
    try {
      await group.applySeason(renderSeason(seasonFrom(document, 'season')), 'season', who, version);
      return answer;
    } catch (error) {
      if (!(error instanceof UnknownName) || error.remark.code !== 'season-moved') throw error;
    }
  }
  throw new FieldRefused({ code: 'field-busy', with: {} }, 1);
}
