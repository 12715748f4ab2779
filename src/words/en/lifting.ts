import type { LiftingCommandWords, LiftingPlanWords, OutcomeWords, TallyWords } from '../../lifting/words.js';
import { dayAndTime, decimal, list, longDay, percent, shortDay, whole } from '../format.js';
import { byWhom } from '../somebody.js';

type Phrases<Words> = { [Code in keyof Words]: (words: Words[Code]) => string };

const day = (at: number) => longDay('en', at);
const boxes = (count: number) => (count === 1 ? 'one box' : `${whole('en', count)} boxes`);
const share = (of: number) => (of > 0 && of < 0.1 ? percent('en', of, 1) : percent('en', of));
const chance = (of: number) => (of > 0.99 ? 'more than 99%' : of < 0.01 ? 'less than 1%' : percent('en', of));
const about = (count: number) =>
  count < 0.5
    ? 'none'
    : count < 10
      ? `about ${whole('en', count)}`
      : `about ${whole('en', Number(count.toPrecision(2)))}`;
/** Before a noun: none is "no alevins" there. */
const some = (count: number) => (count < 0.5 ? 'no' : about(count));
const more = (count: number) =>
  Math.abs(count) < 0.5 ? 'no more' : count < 0 ? `${about(-count)} fewer` : `${about(count)} more`;
const quantities = { level: 'level', discharge: 'discharge' } as const;
const unit = { level: 'm', discharge: 'm³/s' } as const;

const plan: Phrases<LiftingPlanWords> = {
  'lifting-share': ({ mean, from, to, digits }) => {
    const pc = (of: number) => percent('en', of, digits);
    if (mean > to) return `${pc(mean)} (9 times in 10 at most ${pc(to)})`;
    if (mean < from) return `${pc(mean)} (9 times in 10 at least ${pc(from)})`;
    return `${pc(mean)} (${pc(from)} – ${pc(to)})`;
  },
  'lifting-one-day': ({ day: at, boxes: count, sites }) =>
    `Lift on ${day(at)}: ${boxes(count)} at ${sites === 1 ? 'one site' : `${whole('en', sites)} sites`}.`,
  'lifting-days': ({ days }) =>
    `Lift on ${list(
      'en',
      days.map((one) => `${shortDay('en', one.day)} (${boxes(one.boxes)})`),
    )}.`,
  'lifting-sure': ({ chance: sure, boxes: count }) =>
    count === 1
      ? `The chance that it is within both levels then is ${chance(sure)}.`
      : `The chance that every box is within both levels then is ${chance(sure)}.`,
  'lifting-single-site-trade': ({ single, day: at }) =>
    `All on one day, at best ${day(at)}, the chance would be ${chance(single)}.`,
  'lifting-none-good': ({ chance: sure, stillInBox, emerged }) =>
    `No day is likely to keep both levels (${share(stillInBox)} of alevins still in the box, ${share(emerged)} of fry on the wrong side of emergence): the best there is has a chance of ${chance(sure)}.`,
  'lifting-least-bad': ({ days }) =>
    `Least bad: ${list(
      'en',
      days.map((one) => `${shortDay('en', one.day)} (${boxes(one.boxes)})`),
    )}.`,
  'lifting-far-off': ({ days }) =>
    `They are ${whole('en', days)} days off: most of the doubt is weather still to come, and nothing has to be settled now.`,
  'lifting-price': ({ alevins, fry, eggs, after }) =>
    after
      ? `Expected then: ${some(alevins)} alevins still in boxes and ${some(fry)} fry still in the gravel, of ${whole('en', eggs)} eggs planted.`
      : `Expected then: ${some(alevins)} alevins still in boxes and ${some(fry)} fry already out of the gravel, of ${whole('en', eggs)} eggs planted.`,
  'lifting-earlier': ({ alevins, fry, chance: sure }) =>
    `A day earlier: ${more(alevins)} alevins taken out with the boxes, ${more(fry)} fry out of the gravel; chance ${chance(sure)}.`,
  'lifting-later': ({ alevins, fry, chance: sure }) =>
    `A day later: ${more(fry)} fry out of the gravel, ${more(alevins)} alevins taken out with the boxes; chance ${chance(sure)}.`,
  'lifting-later-after': ({ fry, chance: sure }) =>
    `A day later: ${more(fry)} fry still in the gravel under your feet; chance ${chance(sure)}.`,
  'lifting-earlier-after': ({ fry, alevins, chance: sure }) =>
    `A day earlier: ${more(fry)} fry still in the gravel and ${more(alevins)} alevins still in boxes; chance ${chance(sure)}.`,
  'lifting-costs': () =>
    'The two sides do not cost the same. Too early costs alevins: they come out with the box. Too late mostly costs evidence, for the boxes tell less; but feet in gravel that holds alevins and fry kill them too, so step only where you must.',
  'lifting-look-again': ({ day: at }) =>
    `Look at the plan again by ${day(at)}: by then the water of these weeks is known.`,
  'lifting-all-blocked': ({ boxes: count }) =>
    `There is no day to lift ${boxes(count)}: every day that would do is blocked. Free one, or ask again when the list has changed.`,
  'lifting-some-blocked': ({ boxes: names }) =>
    `No day is left for ${list('en', names)}: too many days are blocked for so many boxes a day.`,
  'lifting-would-free': ({ chance: sure }) =>
    `With every day free and crew enough the chance would be ${chance(sure)}.`,
  'lifting-would-stagger': ({ chance: sure, single }) =>
    `Staggering the sites, as these days do, raises the chance from ${chance(single)} to ${chance(sure)}.`,
  'lifting-would-levels': () =>
    'Wider levels would make more days possible; they are the biologist’s to set.',
  'lifting-would-apart': ({ chance: sure }) =>
    `With every site on a day of its own, whatever trips are shared now, the chance would be ${chance(sure)}.`,
  'lifting-would-download': ({ stations, stage, narrower }) =>
    `One more download (${list('en', stations)}), as soon as ice, water and eggs allow, narrows the next window (${stage}) by up to ${decimal('en', narrower, 1)} days.`,
  'lifting-nothing-left': () => 'Every box has been lifted or is gone: there is nothing left to plan.',
  'lifting-no-boxes': () => 'The season has no boxes yet: there is nothing to plan.',
  'lifting-no-forecast': ({ boxes: names, why }) =>
    `Nothing is known of the dates of ${list('en', names)}, so no day is offered. ${
      why.length === 0 ? 'The table names no hatch, or nothing is known of the water.' : why.join(' ')
    }`,
  'lifting-stage-stands-in': ({ stage, boxes: names }) =>
    `The table for ${list('en', names)} names no emergence: ${stage} stands in for it.`,
  'lifting-no-gravel-stage': ({ boxes: names }) =>
    `The table for ${list('en', names)} names no stage after hatch: only leaving the box is planned on, and nothing is known of fry leaving the gravel.`,
  'lifting-outside-permit': ({ permits }) => `outside the permit (${permits})`,
  'lifting-gauge-high': ({ station, quantity, value, most }) =>
    `${quantities[quantity]} at ${station} is ${decimal('en', value, 2)} ${unit[quantity]}, above ${decimal('en', most, 2)}`,
  'lifting-gauge-rule': ({ station, quantity, most, value }) =>
    `Do not go into the water above ${decimal('en', most, 2)} ${unit[quantity]} at ${station}${value === null ? '; no recent reading is known' : ` (last known ${decimal('en', value, 2)})`}: read it on the morning itself, for nobody can forecast it.`,
  'lifting-approved': ({ by, at, zone }) =>
    `Approved by ${byWhom('en', by)} on ${dayAndTime('en', at, zone)}.`,
  'lifting-draft': () => 'This plan is a draft: nobody has approved it.',
  'lifting-moved': ({ days, later, since }) =>
    `Since it was approved the plan has moved ${days === 1 ? 'a day' : `${whole('en', days)} days`} ${later ? 'later' : 'earlier'}, on what came in from ${day(since)} on.`,
  'lifting-moved-boxes': ({ boxes: names }) => `Boxes with another day than approved: ${list('en', names)}.`,
  'lifting-not-moved': () => 'The forecast still says the same days.',
  'lifting-came-in': ({ things }) => `Since then came in: ${list('en', things)}.`,
  'lifting-nothing-to-approve': () => 'There is no recommended day, so there is nothing to approve.',
  'lifting-plan-changed': () =>
    'The plan has changed since you looked at it: look at it again, then approve it.',
};

const tally: Phrases<TallyWords> = {
  'tally-agrees': ({ counted }) => `${whole('en', counted)} counted: as many as were planted.`,
  'tally-short': ({ counted, planted }) =>
    `${whole('en', counted)} counted of ${whole('en', planted)} planted: ${whole('en', planted - counted)} are not accounted for.`,
  'tally-over': ({ counted, planted }) =>
    `${whole('en', counted)} counted of ${whole('en', planted)} planted: ${whole('en', counted - planted)} too many, and the count stands.`,
  'tally-partial': () => 'Not all three numbers were written down, so the sum says nothing.',
  'tally-two-counts': ({ counters, difference }) =>
    `Counted by ${list('en', counters)}: they differ by ${whole('en', difference)}, which is the counting error.`,
  'tally-gone': ({ found }) => `The box was ${found}.`,
  'tally-found-elsewhere': ({ where }) => `Found elsewhere: ${where}.`,
  'tally-kept': ({ box }) => `The tally of box ${box} is kept.`,
  'tally-kept-before': ({ box }) => `This tally of box ${box} was kept already: it is there once.`,
  'tally-put-back-kept': ({ box }) =>
    `Box ${box} is noted as checked and put back. Its windows and the plan have been worked out anew.`,
  'tally-empty-left-or-gone': () =>
    'An empty compartment held an egg that left or is gone: survival from empties is an upper figure.',
  'tally-found-in-place': () => 'found where it was',
  'tally-found-not-found': () => 'not found',
  'tally-found-carried-away': () => 'carried away',
  'tally-found-found-elsewhere': () => 'found elsewhere',
};

const outcome: Phrases<OutcomeWords> = {
  'outcome-still': ({ box, day: at, share: of }) =>
    `${box}, checked and put back on ${day(at)}: ${share(of)} were still in the box.`,
  'outcome-left': ({ box, day: at, share: of }) =>
    `${box}, lifted on ${day(at)}: ${share(of)} of the living were still in it.`,
  'outcome-hatched': ({ box, day: at, least, most }) =>
    least >= most - 0.001
      ? `${box}, opened on ${day(at)}: ${share(least)} had hatched.`
      : `${box}, opened on ${day(at)}: at least ${share(least)} and at most ${share(most)} had hatched; an empty place may be either.`,
  'outcome-seen': ({ box, stage, day: at, share: of }) =>
    of === null
      ? `${box}: ${stage} seen on ${day(at)}.`
      : `${box}: ${stage} seen in ${share(of)} on ${day(at)}.`,
  'outcome-said': ({ asOf, from, to, share: of }) =>
    `On ${shortDay('en', asOf)} the forecast said ${share(of)} for that day (${of > to ? `9 times in 10 at most ${share(to)}` : of < from ? `9 times in 10 at least ${share(from)}` : `80%: ${share(from)} to ${share(to)}`})`,
  'outcome-agrees': () => 'within the interval',
  'outcome-early': () => 'development was ahead of the forecast',
  'outcome-late': () => 'development was behind the forecast',
  'outcome-none': () => 'Nothing has been lifted, checked or seen yet that could be compared.',
};

const command: Phrases<LiftingCommandWords> = {
  'cli-lifting': () => 'when the boxes may come out, how sure that is, and what other days cost',
  'cli-lifting-as-of': () => 'as it was known on this date (year-month-day)',
  'cli-lifting-approve': () => 'approve the plan as it stands, in your name',
  'cli-lifting-outcome': () => 'compare the windows as they stood with what was found at lifting',
  'cli-lifting-title': ({ day: at }) => `Lifting, as known on ${day(at)}`,
  'cli-lifting-would': () => 'What would make a better day possible',
  'cli-tally': () => 'note what was counted in a lifted box; without a box, list the tallies',
  'cli-tally-box': () => 'the box that was counted',
  'cli-tally-empty': () => 'empty compartments',
  'cli-tally-dead': () => 'dead eggs and alevins',
  'cli-tally-alive': () => 'living eggs and alevins still in the box',
  'cli-tally-alive-eggs': () =>
    'of the alive, eggs that have not hatched: told from alevins, they bound hatch',
  'cli-tally-date': () => 'day of the count (year-month-day); today where not given',
  'cli-tally-part': () => 'the part of the box that was counted, as the season names it',
  'cli-tally-counter': () => 'who counted',
  'cli-tally-found': () => 'in-place, not-found, carried-away or found-elsewhere',
  'cli-tally-kind': () =>
    'dead of one kind, as kind=number: neverFertilised, beforeEyeUp, eyedDied, hatchedDied, fungus, silted, cannotTell',
  'cli-tally-silt': () => 'depth of silt, mm',
  'cli-tally-damage': () => 'what was broken',
  'cli-tally-note': () => 'a note',
  'cli-tally-put-back': () => 'the box was only checked and put back: no lifting',
  'cli-tally-stands': () => 'more came out than was planted, and the count stands',
  'cli-tally-entry': () => 'a name for this entry; sent again it is not kept twice',
  'cli-tally-none': () => 'No box has been tallied yet.',
  'column-day': () => 'Day',
  'column-site': () => 'Site',
  'column-boxes': () => 'Boxes',
  'column-chance': () => 'Chance',
  'column-still': () => 'Still in box',
  'column-out': () => 'Out of gravel',
  'column-blocked': () => 'Blocked',
  'column-empty': () => 'Empty',
  'column-dead': () => 'Dead',
  'column-alive': () => 'Alive',
  'column-planted': () => 'Planted',
  'column-counter': () => 'Counted by',
};

export const lifting = { ...plan, ...tally, ...outcome, ...command };
