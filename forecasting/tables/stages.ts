import type { StageCalled } from '../table.js';
import { shippedTables } from './index.js';

/** What the stages are called that most tables have. */
const usual: Readonly<Record<string, StageCalled>> = {
  'eye-up': {
    en: { name: 'eye-up', done: 'eyed up', eggs: 'eyed' },
    fr: {
      name: 'œuf œillé',
      the: 'le stade œillé',
      gender: 'm',
      done: ['sont', 'œillés'],
      past: 'œillés',
      eggs: 'œillés',
    },
  },
  hatch: {
    en: { name: 'hatch', done: 'hatched', eggs: 'hatched (alevins)' },
    fr: {
      name: 'éclosion',
      the: 'l’éclosion',
      gender: 'f',
      done: ['ont', 'éclos'],
      past: 'éclos',
      eggs: 'éclos (alevins vésiculés)',
    },
  },
  'button-up': {
    en: { name: 'button-up', done: 'buttoned up', eggs: 'buttoned up' },
    fr: {
      name: 'résorption du sac vitellin',
      the: 'la résorption du sac vitellin',
      gender: 'f',
      done: ['ont', 'résorbé leur sac vitellin'],
      past: 'sac vitellin résorbé',
      eggs: 'au sac vitellin résorbé',
    },
  },
  emergence: {
    en: { name: 'emergence', done: 'left the gravel as fry', eggs: 'emerged' },
    fr: {
      name: 'émergence',
      the: 'l’émergence',
      gender: 'f',
      done: ['ont', 'quitté le gravier à l’état d’alevins'],
      past: 'émergence passée',
      eggs: 'sortis du gravier',
    },
  },
};

/**
 * What a stage is called: as a shipped table's row for it says, else as usual; undefined for a stage that only a
 * group's own table has.
 * @example stageCalled('hatch')?.en.eggs // 'hatched (alevins)'
 */
export function stageCalled(stage: string): StageCalled | undefined {
  for (const { stages } of shippedTables)
    for (const row of stages) if (row.stage === stage && row.called !== undefined) return row.called;
  return usual[stage];
}
