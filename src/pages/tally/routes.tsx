import { randomUUID } from 'node:crypto';
import { type Context, Hono } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import type { Environment } from '../../http/environment.js';
import { type Entered, enterPutBack, enterTally, type Kept } from '../../lifting/index.js';
import { deadKinds, typedFigure } from '../../season/index.js';
import { isRefusal } from '../../words/refusals.js';
import { viewOf } from '../view.js';
import { TallyBoxPage } from './box.js';
import { TallyListPage } from './list.js';
import { type Refused, wrongsOf } from './wrongs.js';

const TALLY = [
  'entry',
  'when',
  'part',
  'counter',
  'found',
  'foundAt',
  'empty',
  'dead',
  'alive',
  'aliveEggs',
  'siltMm',
  'damage',
  'countStands',
  'note',
];
/** Fields that are numbers; the kinds of dead are as well. */
const FIGURES: ReadonlySet<string> = new Set(['empty', 'dead', 'alive', 'aliveEggs', 'siltMm', ...deadKinds]);
const PUT_BACK = ['entry', 'when', 'who', 'alive', 'aliveEggs', 'empty', 'dead', 'note'];

/**
 * Forms lie under /tally, where no drawn page is kept for the next person: each has an entry id of its own. They are
 * posted to the box.
 */
export function tallyRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/tally', async (c) =>
      c.html(<TallyListPage view={await viewOf(c)} season={await c.var.group.season()} />),
    )
    .get('/tally/:box', async (c) => c.html(await boxPage(c)))
    .post('/boxes/:box/tally', (c) => kept(c, TALLY, enterTally))
    .post('/boxes/:box/put-back', (c) => kept(c, PUT_BACK, enterPutBack));
}

type Enter = (group: Environment['Variables']['group'], entered: Entered, who: string) => Promise<Kept>;

async function kept(c: Context<Environment>, fields: readonly string[], enter: Enter): Promise<Response> {
  const box = c.req.param('box') ?? '';
  try {
    await enter(c.var.group, { box, ...stated(c, fields) }, c.var.person.name);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return c.html(await boxPage(c, { refusal: error, form: fields === TALLY ? 'tally' : 'put-back' }), 422);
  }
  return c.redirect(`/tally/${encodeURIComponent(box)}`, 303);
}

/** What was filled in, in the shape of the season file. */
function stated(c: Context<Environment>, fields: readonly string[]): Record<string, unknown> {
  const { form } = c.var;
  const typed = (name: string, given: string) => (FIGURES.has(name) ? typedFigure(given) : given.trim());
  const filled = (names: readonly string[]) =>
    Object.fromEntries(
      names.map((name) => [name, typed(name, form.field(name))] as const).filter(([, value]) => value !== ''),
    );
  const kinds = fields === TALLY ? filled(deadKinds) : {};
  return { ...filled(fields), ...(Object.keys(kinds).length === 0 ? {} : { kinds }) };
}

async function boxPage(c: Context<Environment>, refused?: Refused) {
  const season = await c.var.group.season();
  const name = c.req.param('box') ?? '';
  const box = season.boxes.find(({ id }) => id === name);
  if (box === undefined)
    throw new UnknownName({
      code: 'unknown-box',
      with: { box: name, boxes: season.boxes.map(({ id }) => id) },
    });
  const { form } = c.var;
  const again = refused !== undefined;
  const view = await viewOf(c);
  const typed = (field: string) => (again ? (field === 'more' ? 'open' : form.field(field)) : '');
  return (
    <TallyBoxPage
      view={view}
      season={season}
      box={box}
      entry={(again ? form.field('entry') : '') || randomUUID()}
      typed={typed}
      {...(refused === undefined ? {} : { refused: wrongsOf(view, name, refused) })}
    />
  );
}
