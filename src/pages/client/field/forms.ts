import type { FaceWord } from '../../../field/face-words.js';
import type { DeadKind } from '../../../season/index.js';

/** How a question is asked. */
export interface Question {
  readonly name: string;
  readonly word: FaceWord;
  readonly as:
    | 'text'
    | 'figure'
    | 'count'
    | 'choice'
    /** Several of a list, and others typed with commas between. */
    | 'several'
    | 'moment'
    | 'photo'
    | 'position'
    | 'loggers'
    | 'samples';
  /** Of a choice: fixed answers with their words, or a list that was prepared. */
  readonly of?:
    | readonly (readonly [string, FaceWord])[]
    | 'sites'
    | 'boxes'
    | 'parts'
    | 'lots'
    | 'new-lots'
    | 'tables'
    | 'females'
    | 'males'
    | 'adults';
  readonly must?: true;
}

/** When in the season a kind of entry is made. */
export const occasions = ['stripping', 'visits', 'lifting'] as const;

/** A kind of entry as a few screens of questions. */
export interface Form {
  readonly kind: string;
  readonly word: FaceWord;
  readonly occasion: (typeof occasions)[number];
  readonly screens: readonly (readonly Question[])[];
}

/** As src/season/counts has them. */
const deadKinds = [
  'neverFertilised',
  'beforeEyeUp',
  'eyedDied',
  'hatchedDied',
  'fungus',
  'silted',
  'cannotTell',
] as const satisfies readonly DeadKind[];

const ask = (
  name: string,
  word: FaceWord,
  as: Question['as'],
  more: Partial<Pick<Question, 'of' | 'must'>> = {},
): Question => ({ name, word, as, ...more });

const when = ask('when', 'when', 'moment');
const note = ask('note', 'note', 'text');
const site = ask('site', 'site', 'choice', { of: 'sites', must: true });
const box = ask('box', 'box', 'choice', { of: 'boxes', must: true });
const part = ask('part', 'part', 'choice', { of: 'parts' });
const photo = ask('photographs', 'photo', 'photo');
const place = [
  ask('find', 'find', 'text'),
  ask('bankMark', 'bankMark', 'text'),
  ask('tiedTo', 'tiedTo', 'text'),
  ask('position', 'position', 'position'),
  photo,
];

/** In the order of the season. */
export const forms: readonly Form[] = [
  {
    kind: 'adult',
    word: 'kind-adult',
    occasion: 'stripping',
    screens: [
      [
        ask('id', 'id', 'text', { must: true }),
        ask('sex', 'sex', 'choice', {
          of: [
            ['female', 'female'],
            ['male', 'male'],
          ],
        }),
        ask('origin', 'origin', 'choice', {
          of: [
            ['wild', 'wild'],
            ['hatchery', 'hatchery'],
          ],
        }),
      ],
      [
        ask('lengthCm', 'lengthCm', 'figure'),
        ask('sample', 'sample', 'text'),
        ask('fate', 'fate', 'choice', {
          of: [
            ['released', 'released'],
            ['kept', 'kept-fate'],
            ['died', 'died'],
          ],
        }),
        ask('where', 'where', 'text'),
        when,
      ],
    ],
  },
  {
    kind: 'cross',
    word: 'kind-cross',
    occasion: 'stripping',
    screens: [
      [
        ask('female', 'female', 'choice', { of: 'females', must: true }),
        ask('males', 'males', 'several', { of: 'males' }),
      ],
      [ask('lot', 'into-lot', 'choice', { of: 'new-lots' }), ask('id', 'cross-id', 'text'), when],
    ],
  },
  {
    kind: 'strip',
    word: 'kind-strip',
    occasion: 'stripping',
    screens: [
      [
        ask('lot', 'lot', 'choice', { of: 'new-lots', must: true }),
        ask('table', 'table', 'choice', { of: 'tables', must: true }),
      ],
      [
        ask('counted', 'counted', 'choice', {
          of: [
            ['displacement', 'counted-displacement'],
            ['weight', 'counted-weight'],
          ],
        }),
        ask('samples', 'sample-add', 'samples'),
        ask('total', 'total', 'figure'),
        ask('eggs', 'eggs-otherwise', 'count'),
      ],
      [
        ask('parents', 'parents', 'several', { of: 'adults' }),
        ask('controlEggs', 'controlEggs', 'count'),
        ask('disinfectedWith', 'disinfectedWith', 'text'),
        ask('disinfectedMinutes', 'disinfectedMinutes', 'figure'),
      ],
      [when, note],
    ],
  },
  {
    kind: 'plant',
    word: 'kind-plant',
    occasion: 'stripping',
    screens: [
      [site],
      [box, part],
      [ask('lot', 'lot', 'choice', { of: 'lots', must: true }), ask('eggs', 'eggs', 'count', { must: true })],
      [
        ask('transportC', 'transportC', 'figure'),
        ask('siteC', 'siteC', 'figure'),
        ask('temperedMinutes', 'temperedMinutes', 'figure'),
      ],
      [ask('unfilled', 'unfilled', 'count'), ask('doubled', 'doubled', 'count')],
      place,
      [when],
    ],
  },
  { kind: 'find', word: 'kind-find', occasion: 'stripping', screens: [[box], place] },
  {
    kind: 'visit',
    word: 'kind-visit',
    occasion: 'visits',
    screens: [
      [site],
      [
        ask('celsius', 'celsius', 'figure'),
        ask('ice', 'ice', 'choice', {
          of: [
            ['none', 'ice-none'],
            ['on', 'ice-on'],
            ['under', 'ice-under'],
            ['out', 'ice-out'],
          ],
        }),
        ask('levelM', 'levelM', 'figure'),
      ],
      [ask('loggers', 'logger', 'loggers')],
      [
        photo,
        ask('putBack', 'putBack', 'choice', {
          of: [
            ['true', 'yes'],
            ['false', 'no'],
          ],
        }),
        note,
      ],
      [ask('who', 'who', 'text'), ask('hours', 'hours', 'figure'), when],
    ],
  },
  {
    kind: 'check',
    word: 'kind-check',
    occasion: 'visits',
    screens: [
      [site],
      [box],
      [ask('alive', 'alive', 'count', { must: true }), ask('empty', 'empty', 'count')],
      [ask('aliveEggs', 'aliveEggs', 'count'), ask('dead', 'dead', 'count'), when, note],
    ],
  },
  {
    kind: 'tally',
    word: 'kind-tally',
    occasion: 'lifting',
    screens: [
      [site],
      [box],
      [ask('empty', 'empty', 'count'), ask('dead', 'dead', 'count'), ask('alive', 'alive', 'count')],
      [
        ask('found', 'found', 'choice', {
          of: [
            ['in-place', 'found-in-place'],
            ['not-found', 'found-not-found'],
            ['carried-away', 'found-carried-away'],
            ['found-elsewhere', 'found-found-elsewhere'],
          ],
        }),
        ask('foundAt', 'foundAt', 'text'),
      ],
      [part, ask('siltMm', 'siltMm', 'figure'), ask('damage', 'damage', 'text'), photo],
      [ask('aliveEggs', 'aliveEggs', 'count'), ...deadKinds.map((kind) => ask(kind, kind, 'count'))],
      [
        ask('countStands', 'countStands', 'choice', { of: [['true', 'yes']] }),
        ask('counter', 'counter', 'text'),
        when,
        note,
      ],
    ],
  },
];
