import type { LiftingPageWords } from '../../lifting/words.js';
import { list, longDay, percent, shortDay, whole } from '../format.js';

const share = (of: number) => (of > 0 && of < 0.1 ? percent('en', of, 1) : percent('en', of));

export const pagesLifting: { [Code in keyof LiftingPageWords]: (words: LiftingPageWords[Code]) => string } = {
  'page-nav-lifting': () => 'Lifting',
  'page-lifting-title': ({ day }) => `Lifting the boxes, as known on ${longDay('en', day)}`,
  'page-lifting-approve': () => 'Approve this plan',
  'page-lifting-approve-note': () =>
    'Your name and the time are kept with it. Sheets say “draft” until then.',
  'page-lifting-calendar': () => 'Calendar for the crew',
  'page-lifting-calendar-open': ({ day }) => `Field sheets of ${shortDay('en', day)}`,
  'page-lifting-sheet': ({ site, day }) => `${site}: field sheet for ${shortDay('en', day)}`,
  'page-lifting-curve-season': ({ day, stillInBox, emerged }) =>
    `All boxes together: on ${shortDay('en', day)}, ${share(stillInBox)} of alevins still in the boxes and ${share(emerged)} of fry out of the gravel`,
  'page-lifting-curve-box': ({ box, day, chance }) =>
    `${box}: on ${shortDay('en', day)} both levels are kept with a chance of ${percent('en', chance)}`,
  'page-lifting-curve-box-none': ({ box }) => `${box}: no day is left for it`,
  'page-lifting-line-still': () => 'Still in the box',
  'page-lifting-line-out': () => 'Out of the gravel',
  'page-lifting-line-chance': () => 'Chance of both levels',
  'page-lifting-shift-still': () => 'Alevins still in boxes',
  'page-lifting-shift-out': () => 'Fry out of the gravel',
  'page-lifting-calendar-note': () =>
    'The figure of a day: the chance that every box left would keep both levels if it were lifted then.',
  'page-lifting-axis': () => 'Share',
  'page-lifting-recommended': () => 'Planned day',
  'page-lifting-boxes': () => 'Each box',
  'page-lifting-shifts': () => 'What other days cost',
  'page-lifting-shift': () => 'The whole plan',
  'page-lifting-shift-days': ({ by }) =>
    by === 0
      ? 'as planned'
      : `${Math.abs(by) === 1 ? 'a day' : `${whole('en', Math.abs(by))} days`} ${by < 0 ? 'earlier' : 'later'}`,
  'page-lifting-rule': ({ after, stillInBox, emerged }) =>
    after
      ? `The rule is: lift after emergence is complete, with at most ${share(stillInBox)} of alevins still in the box and ${share(emerged)} of fry still in the gravel.`
      : `The rule is: lift before fry emerge, with at most ${share(stillInBox)} of alevins still in the box and ${share(emerged)} of fry already out of the gravel. All or none of a thousand eggs is an extreme that no day satisfies.`,
  'page-lifting-rule-change': () => 'Change the rule, the levels or the crew’s limits',
  'page-lifting-change': () => 'Keep',
  'page-lifting-field-rule': () => 'Rule (the biologist’s)',
  'page-lifting-rule-before': () => 'before fry emerge',
  'page-lifting-rule-after': () => 'after emergence is complete',
  'page-lifting-field-still': () => 'Alevins still in the box, at most (%)',
  'page-lifting-field-emerged': () => 'Fry on the wrong side of emergence, at most (%)',
  'page-lifting-field-boxes': () => 'Boxes a day, at most',
  'page-lifting-field-trips': () => 'Sites of one trip (one trip a line, sites parted by commas)',
  'page-lifting-field-gauge': () => 'Station with a level or discharge limit',
  'page-lifting-field-quantity': () => 'Limit of',
  'page-lifting-level': () => 'level (m)',
  'page-lifting-discharge': () => 'discharge (m³/s)',
  'page-lifting-field-most': () => 'Nobody wades above',
  'page-lifting-field-stop': () => 'Stop rule: put back above so many live alevins',
  'page-lifting-blocked-link': () => 'Block days: ice, high water, no permit, no crew',
  'page-lifting-tallies': () => 'Tallies',
  'page-lifting-outcome': () => 'How right the forecast was',
  'page-lifting-outcome-answer': ({ said, within }) =>
    `What was found lay within the 80% interval of ${whole('en', within)} of ${whole('en', said)} forecasts made before.`,
  'page-tally-eggs': ({ eggs }) => `${whole('en', eggs)} eggs`,
  'page-lifting-would': () => 'What would make a better day possible',
  'page-sheet-title': ({ site, day }) => `${site}: lifting on ${longDay('en', day)}`,
  'page-sheet-draft': () => 'DRAFT: this plan has not been approved. Lift nothing on it.',
  'page-sheet-stop': () => 'First of all',
  'page-sheet-stop-rule': ({ box, most, boxes }) =>
    `Open box ${box} only. If more than ${whole('en', most)} live alevins are in it, close it, put it back where it lay, and leave the other ${boxes === 2 ? 'box' : `${whole('en', boxes - 1)} boxes`} alone.`,
  'page-sheet-stop-alone': ({ box, most }) =>
    `Open box ${box}. If more than ${whole('en', most)} live alevins are in it, close it and put it back where it lay.`,
  'page-sheet-stop-enter': () =>
    'Write it down as “checked and put back”: it is no lifting, and it moves the plan at once.',
  'page-sheet-water': () => 'Before you go in',
  'page-sheet-where': () => 'Where they lie and how they are tied',
  'page-sheet-bring': () => 'What to bring',
  'page-sheet-bring-list': () =>
    'Permit; this sheet and a pencil; knife or pliers for the ties; a pail or tray with river water; spoon and counter; white tray and hand lens; bags and labels for samples; ruler for silt; thermometer; waders, life vests, a rope; never alone.',
  'page-sheet-boxes': () => 'Boxes',
  'page-sheet-box': ({ box, eggs, still, out }) =>
    `${box}: ${whole('en', eggs)} eggs planted; expected ${share(still)} still in it, ${share(out)} out of the gravel.`,
  'page-sheet-form': () => 'Tally',
  'page-sheet-print': () => 'Print this page for the river; it fits one sheet for a site.',
  'page-sheet-not-planned': () =>
    'The plan lifts nothing here on this day: the boxes below are those that lie at the site.',
  'page-sheet-signed': () => 'Counted by, date, time',
  'page-tally-title': () => 'Tallies',
  'page-tally-answer': ({ tallied, boxes }) =>
    `${whole('en', tallied)} of ${boxes === 1 ? 'one box' : `${whole('en', boxes)} boxes`} counted.`,
  'page-tally-box-title': ({ box }) => `Tally of box ${box}`,
  'page-tally-box-answer': ({ box, eggs, mayCount }) =>
    `${whole('en', eggs)} eggs were planted in ${box}.${mayCount ? ' Three numbers are enough; the rest can wait.' : ''}`,
  'page-tally-empty': () => 'Empty',
  'page-tally-dead': () => 'Dead',
  'page-tally-alive': () => 'Alive',
  'page-tally-alive-eggs': () => 'Of the alive, eggs not hatched',
  'page-tally-more': () => 'More: part, living eggs, kinds of dead, silt, damage',
  'page-tally-part': () => 'Part of the box',
  'page-tally-part-whole': () => 'the whole box',
  'page-tally-counter': () => 'Counted by',
  'page-tally-found': () => 'The box was',
  'page-tally-found-at': () => 'Found where',
  'page-tally-kinds': () => 'Of the dead, as far as it can be told',
  'page-tally-kind-neverFertilised': () => 'never fertilised',
  'page-tally-kind-beforeEyeUp': () => 'died before eye-up',
  'page-tally-kind-eyedDied': () => 'eyed and died',
  'page-tally-kind-hatchedDied': () => 'hatched and died',
  'page-tally-kind-fungus': () => 'fungus',
  'page-tally-kind-silted': () => 'silted',
  'page-tally-kind-cannotTell': () => 'dead, cannot tell',
  'page-tally-silt': () => 'Silt, mm deep',
  'page-tally-damage': () => 'Damage',
  'page-tally-stands': () => 'More came out than was written down: the count stands',
  'page-tally-keep': () => 'Keep the tally',
  'page-tally-next': () => 'Next box',
  'page-tally-yet': () => 'Boxes to count',
  'page-tally-done': () => 'Counted',
  'page-tally-none': () => 'No box has been tallied yet.',
  'page-put-back-title': () => 'Checked and put back',
  'page-put-back-note': () =>
    'The box was opened, too many were still in it, and it went back: no lifting. Its windows and the plan are worked out anew at once.',
  'page-put-back-alive': () => 'Alive in it',
  'page-put-back-keep': () => 'Keep: put back',
  'http-calendar-lifting': ({ sites, draft }) =>
    `Lift boxes at ${list('en', sites)} (${draft ? 'draft' : 'estimate'})`,
  'http-calendar-lifting-about': ({ boxes, chance, draft }) =>
    `${draft ? 'A draft: nobody has approved it. ' : ''}Boxes ${list('en', boxes)}. Chance of both levels ${percent('en', chance)}. The water on the morning decides.`,
};
