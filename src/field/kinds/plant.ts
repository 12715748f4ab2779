import { typedFigure } from '../../season/index.js';
import { added, changed, type Document, isThing, sameId, siteCalled, stated, things } from '../document.js';
import type { Given } from '../given.js';
import { EntryWaits } from '../refused.js';
import type { EntryKind } from './kind.js';

/** Eggs of one lot put into a box or a part of it. A box that is not there yet comes with it. */
export const plant: EntryKind = {
  kind: 'plant',
  apply(document, given, { who, at: entered, when }) {
    const box = given.must('box');
    const lot = given.must('lot');
    const site = given.text('site');
    const part = given.text('part');
    const typed = given.text('when');
    const fill = stated({
      lot,
      part,
      eggs: typedFigure(given.must('eggs')),
      planted: typed === '' ? entered : when(typed),
      unfilled: given.text('unfilled'),
      doubled: given.text('doubled'),
    });
    const planting = stated({
      transportC: given.figure('transportC'),
      siteC: given.figure('siteC'),
      temperedMinutes: given.figure('temperedMinutes'),
    });
    const people = [who].filter((name) => name !== '' && name !== '-');
    const more = stated({
      compartments: given.text('compartments'),
      ...whereItLies(given),
      planting: Object.keys(planting).length === 0 ? {} : stated({ ...planting, who: people }),
    });
    given.noMore();
    const standing = things(document, 'boxes').find(({ id }) => sameId(id, box));
    const became = `fill ${box} ${lot}`;
    if (standing === undefined) {
      if (site === '') throw new EntryWaits({ code: 'field-missing', with: { field: 'site' } });
      return { document: added(document, 'boxes', { id: box, site, ...more, fills: [fill] }), became };
    }
    if (site !== '' && !sameId(standing.site, site))
      throw new EntryWaits({
        code: 'field-box-elsewhere',
        with: { box, site: siteCalled(document, standing.site), given: siteCalled(document, site) },
      });
    const fills = fillsOf(standing);
    const there = fills.find((one) => (one.part ?? '') === part || one.part === undefined || part === '');
    if (there !== undefined)
      throw new EntryWaits({ code: 'field-already-planted', with: { box, lot: String(there.lot) } });
    const filled = (one: Document) => ({ ...one, ...more, fills: [...fills, fill] });
    return { document: changed(document, 'boxes', (one) => one === standing, filled), became };
  },
};

/** How to find a box again, to put down when it is planted or later. */
export const find: EntryKind = {
  kind: 'find',
  apply(document, given) {
    const box = given.must('box');
    const more = stated(whereItLies(given));
    given.noMore();
    const is = ({ id }: Document) => sameId(id, box);
    const standing = things(document, 'boxes').find(is);
    if (standing === undefined) throw new EntryWaits({ code: 'field-box-unknown', with: { box } });
    const photographs = [standing.photographs, more.photographs].flatMap((all) =>
      Array.isArray(all) ? all : [],
    );
    const change = (one: Document) => stated({ ...one, ...more, photographs: [...new Set(photographs)] });
    return { document: changed(document, 'boxes', is, change), became: `box ${box}` };
  },
};

function whereItLies(given: Given): Document {
  return {
    find: given.text('find'),
    bankMark: given.text('bankMark'),
    tiedTo: given.text('tiedTo'),
    latitude: given.figure('latitude'),
    longitude: given.figure('longitude'),
    photographs: given.list('photographs'),
  };
}

function fillsOf(box: Document): readonly Document[] {
  const fills = Array.isArray(box.fills) ? box.fills.filter(isThing) : [];
  const { planted } = box;
  // One `planted` may stand at the box for all its fills.
  return planted === undefined ? fills : fills.map((fill) => ({ planted, ...fill }));
}
