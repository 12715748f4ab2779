import type { CountProblemWords } from '../../season/counts.js';
import { whole } from '../format.js';

const clock = (moment: string) => moment.slice(0, 16).replace('T', ' ');

/** What can be wrong with a tally, or with a box checked and put back. */
export const counts: { [Code in keyof CountProblemWords]: (words: CountProblemWords[Code]) => string } = {
  'season.bad-entry': ({ given }) =>
    `“${given}” cannot name an entry: use 4 to 80 letters, digits, - _ . or :.`,
  'season.same-entry': ({ entry }) => `Entry “${entry}” stands twice: keep one of them.`,
  'season.counted-more': ({ box, counted, planted }) =>
    `${whole('en', counted)} were counted out of box “${box}”, where ${whole('en', planted)} eggs were planted: that is ${whole('en', counted - planted)} too many. Count again; if it is right, say that the count stands.`,
  'season.counted-before-planted': ({ box, counted, planted }) =>
    `Box “${box}” was counted on ${clock(counted)}, before it was planted on ${clock(planted)}: one of the dates is wrong.`,
  'season.kinds-more-than-dead': ({ kinds, dead }) =>
    `The kinds of dead come to ${whole('en', kinds)}, and ${whole('en', dead)} dead were counted: the kinds are part of the dead.`,
  'season.eggs-more-than-alive': ({ box, eggs, alive }) =>
    `${whole('en', eggs)} living eggs were counted in box “${box}”, and ${whole('en', alive)} alive in all: the eggs are part of the living.`,
  'season.no-such-part': ({ box, part, known }) => `Box “${box}” has no part “${part}”. It has: ${known}.`,
  'season.nothing-counted': ({ box }) =>
    `Nothing was counted in box “${box}”: write how many are empty, dead and alive, or that it was not found or carried away.`,
  'season.counted-though-gone': ({ box }) =>
    `Box “${box}” was not found or was carried away, and yet something was counted in it: keep one of the two.`,
  'season.gauge-has-no': ({ station, quantity }) =>
    `Station “${station}” does not record ${quantity}: name one that does, or add it to its quantities.`,
};
