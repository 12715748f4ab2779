import { withLifted } from '../../lifting/lifted.js';
import { deadKinds } from '../../season/index.js';
import { added, type Document, sameId, siteCalled, stated, things } from '../document.js';
import type { Given } from '../given.js';
import { EntryWaits } from '../refused.js';
import type { Around, EntryKind } from './kind.js';

/** What one person counted in a box that came out, or that it was gone. Another's count of it is an entry of its own. */
export const tally: EntryKind = {
  kind: 'tally',
  apply(document, given, around) {
    const { box, when } = where(document, given, around);
    const found = given.text('found');
    const one = stated({
      entry: around.id,
      box,
      part: given.text('part'),
      when,
      counter: given.text('counter') || (around.who === '-' ? '' : around.who),
      found,
      foundAt: given.text('foundAt'),
      ...three(given),
      kinds: stated(Object.fromEntries(deadKinds.map((kind) => [kind, given.figure(kind)]))),
      siltMm: given.figure('siltMm'),
      damage: given.text('damage'),
      photographs: given.list('photographs'),
      countStands: given.text('countStands'),
      note: given.text('note'),
    });
    given.noMore();
    const gone = found === 'not-found' || found === 'carried-away';
    const counted = added(document, 'tallies', one);
    return { document: gone ? counted : withLifted(counted, box, when), became: `tally ${box}` };
  },
};

/** A box that was opened, found still occupied, closed and put back: no lifting. */
export const check: EntryKind = {
  kind: 'check',
  apply(document, given, around) {
    const { box, when } = where(document, given, around);
    const one = stated({
      entry: around.id,
      box,
      when,
      who: given.text('who') || (around.who === '-' ? '' : around.who),
      ...three(given),
      note: given.text('note'),
    });
    given.noMore();
    if (one.alive === undefined) throw new EntryWaits({ code: 'field-missing', with: { field: 'alive' } });
    return { document: added(document, 'checkedAndPutBack', one), became: `check ${box}` };
  },
};

function three(given: Given): Document {
  return {
    empty: given.figure('empty'),
    dead: given.figure('dead'),
    alive: given.figure('alive'),
    aliveEggs: given.figure('aliveEggs'),
  };
}

/** Box and moment; the site, where it is said, must be the box's own. */
function where(
  document: Document,
  given: Given,
  { at, when }: Around,
): { readonly box: string; readonly when: string } {
  const asked = given.must('box');
  const site = given.text('site');
  const typed = given.text('when');
  const standing = things(document, 'boxes').find(({ id }) => sameId(id, asked));
  if (standing === undefined) throw new EntryWaits({ code: 'field-box-unknown', with: { box: asked } });
  const box = String(standing.id);
  if (site !== '' && !sameId(standing.site, site))
    throw new EntryWaits({
      code: 'field-box-elsewhere',
      with: { box, site: siteCalled(document, standing.site), given: siteCalled(document, site) },
    });
  return { box, when: typed === '' ? at : when(typed) };
}
