import { eggsBySamples } from '../../autumn/index.js';
import { typedFigure } from '../../season/index.js';
import { added, type Document, sameId, stated, things } from '../document.js';
import type { Given } from '../given.js';
import { EntryWaits } from '../refused.js';
import type { EntryKind } from './kind.js';

/** An adult that was caught: broodstock. */
export const adult: EntryKind = {
  kind: 'adult',
  apply(document, given, { at: entered, when }) {
    const id = fresh(document, 'broodstock', given.must('id'));
    const typed = given.text('when');
    const one = stated({
      id,
      when: typed === '' ? entered : when(typed),
      where: given.text('where'),
      sex: given.text('sex'),
      origin: given.text('origin'),
      lengthCm: given.figure('lengthCm'),
      sample: given.text('sample'),
      fate: given.text('fate'),
      note: given.text('note'),
    });
    given.noMore();
    return { document: added(document, 'broodstock', one), became: `broodstock ${id}` };
  },
};

/** One female's eggs and the milt they got; named after the adults where it has no name of its own. */
export const cross: EntryKind = {
  kind: 'cross',
  apply(document, given, { at: entered, when }) {
    const female = given.must('female');
    const males = given.list('males');
    const id = fresh(document, 'crosses', given.text('id') || [female, ...males].join('-'));
    const typed = given.text('when');
    const one = stated({
      id,
      female,
      males,
      when: typed === '' ? entered : when(typed),
      lot: given.text('lot'),
      eggs: given.figure('eggs'),
      note: given.text('note'),
    });
    given.noMore();
    return { document: added(document, 'crosses', one), became: `cross ${id}` };
  },
};

/** Eggs fertilised together, counted by samples or as a person states; a control sample stays in the hatchery. */
export const strip: EntryKind = {
  kind: 'strip',
  apply(document, given, { at: entered, when }) {
    const id = fresh(document, 'lots', given.must('lot'));
    const typed = given.text('when');
    const measured = stated({
      samples: given
        .rows('samples')
        .map((row) => ({ eggs: typedFigure(row.must('eggs')), amount: row.figure('amount') })),
      total: given.figure('total'),
    });
    const one = stated({
      id,
      fertilised: typed === '' ? entered : when(typed),
      parents: given.list('parents'),
      eggs: given.figure('eggs') || countedEggs(measured),
      counted: given.text('counted'),
      measured: 'samples' in measured && 'total' in measured ? measured : {},
      table: given.must('table'),
      disinfected: stated({
        with: given.text('disinfectedWith'),
        minutes: given.figure('disinfectedMinutes'),
      }),
      control: stated({ eggs: given.text('controlEggs'), where: given.text('controlWhere') }),
      lost: given.text('lost'),
      before: before(given),
      note: given.text('note'),
    });
    given.noMore();
    return { document: added(document, 'lots', one), became: `lot ${id}` };
  },
};

function before(given: Given): Document {
  return stated({ station: given.text('beforeStation'), celsius: given.figure('beforeCelsius') });
}

/** What the samples come to, where they are numbers; what is wrong with them the season says. */
function countedEggs({ samples, total }: Document): string {
  if (!Array.isArray(samples) || total === undefined) return '';
  const counts = samples.map(({ eggs, amount }) => ({ eggs: Number(eggs), amount: Number(amount) }));
  const sound = counts.every(({ eggs, amount }) => eggs > 0 && amount > 0) && Number(total) > 0;
  return sound ? String(eggsBySamples(counts, Number(total)).eggs) : '';
}

function fresh(document: Document, list: string, id: string): string {
  if (things(document, list).some((one) => sameId(one.id, id)))
    throw new EntryWaits({ code: 'field-already-there', with: { id } });
  return id;
}
