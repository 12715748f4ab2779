import type { AutumnPageWords } from '../../pages/autumn-words.js';
import { whole, writtenDay } from '../format.js';

const day = (date: string) => writtenDay('en', date);

export const pagesAutumn: { [Code in keyof AutumnPageWords]: (figures: AutumnPageWords[Code]) => string } = {
  'page-nav-autumn': () => 'Autumn and visits',
  'page-autumn-title': () => 'Autumn and visits',
  'page-autumn-answer': ({ unplaced, lots }) =>
    unplaced === 0
      ? `Every egg of ${whole('en', lots)} ${lots === 1 ? 'lot' : 'lots'} is accounted for.`
      : `${whole('en', unplaced)} eggs are not accounted for yet: put them into boxes, or state them as control, lost or left over.`,
  'page-autumn-answer-none': () => 'No lots yet. Begin with the adults, or with a lot.',
  'page-autumn-did': () => 'Kept.',
  'page-autumn-enter': () => 'Enter',
  'page-autumn-lots': () => 'Where every egg is',
  'page-autumn-in-boxes': () => 'in boxes',
  'page-autumn-control': () => 'control',
  'page-autumn-lost': () => 'lost',
  'page-autumn-left-over': () => 'left over',
  'page-autumn-unplaced': () => 'not accounted for',
  'page-autumn-count': ({ eggs, low, high, samples }) =>
    `Counted by ${whole('en', samples)} samples: ${whole('en', eggs)} eggs, between ${whole('en', low)} and ${whole('en', high)} (95%).`,
  'page-autumn-count-one': () => 'Counted by one sample: a second one would tell how sure the count is.',
  'page-autumn-fertilised': ({ rate, of }) => `Fertilised: ${rate} of ${whole('en', of)} looked at.`,
  'page-autumn-no-box': ({ lot }) => `Lot ${lot} is in no box yet.`,
  'page-autumn-no-lot': ({ box }) => `Box ${box} holds no eggs yet.`,
  'page-autumn-permits': () => 'Permits',
  'page-autumn-permit': ({ number, from, to, due }) =>
    `${number}: ${day(from)} to ${day(to)}${due === '' ? '' : `, report due on ${day(due)}`}`,
  'page-autumn-visits': () => 'Visits',
  'page-autumn-sheet': () => 'Sheets to print',
  'page-autumn-sheet-answer': () =>
    'A sheet a site, a line a box. Write with a pencil: it holds on wet paper. Type them in afterwards, a row a box.',
  'page-autumn-hear': () => 'Before the eggs go in:',
  'page-autumn-keep-anyway': () => 'I have read this: keep it as it is',
  'page-autumn-plan': () => 'Fill the rows with the eggs that are nowhere yet',
  'page-autumn-plan-none': () =>
    'There is nothing to fill in: no box without eggs states how many compartments it has.',
  'page-autumn-paper': () => 'To write on paper, print the “Sheets to print”, under Autumn and visits.',
  'page-autumn-loggers': () => 'Loggers',
  'page-autumn-samples': () => 'Counted samples',
  'page-autumn-grid': () => 'Type in sheets',
  'page-autumn-grid-answer': () =>
    'A row a box. Tab goes on to the next field. Rows that fit are kept; the others come back with what is wrong.',
  'page-autumn-grid-refused': () => 'These rows were not kept:',
  'page-autumn-grid-keep': () => 'Keep the rows',
  'page-autumn-entries': () => 'Entries from the field',
  'page-autumn-phone': () => 'On the phone',
  'page-autumn-earlier': () => 'Past seasons',
  'autumn-permit-ends': ({ number }) => `Permit ${number} ends`,
  'autumn-permit-report': ({ number }) => `Report on permit ${number} is due`,
  'autumn-permit-about': ({ from, to, authority }) =>
    `Valid from ${from} to ${to}${authority === '' ? '' : `, ${authority}`}. The authority decides.`,
  'page-site-cards': () => 'Site cards',
  'page-site-title': ({ site }) => `Site card: ${site}`,
  'page-site-answer': ({ boxes }) =>
    `${whole('en', boxes)} ${boxes === 1 ? 'box' : 'boxes'} this season; nothing of past seasons is known here.`,
  'page-site-answer-past': ({ boxes, seasons, least, most }) =>
    `${whole('en', boxes)} ${boxes === 1 ? 'box' : 'boxes'} this season. In ${seasons === 1 ? 'one past season' : `${whole('en', seasons)} past seasons`} ${least === most ? least : `${least} to ${most}`} of the eggs left their boxes: an upper figure.`,
  'page-site-boxes': () => 'How to find each box',
  'page-site-position': () => 'position',
  'page-site-depth': () => 'depth',
  'page-site-velocity': () => 'water’s speed',
  'page-site-past': () => 'Past seasons at this site',
  'page-site-interval': () => '95% interval',
  'page-site-from-to': ({ from, to }) => `${from} to ${to}`,
  'page-site-past-note': () =>
    'An empty compartment held an egg that left or is gone: shares are upper figures. Winters and lots differ: a site is not good or bad by one season.',
  'page-site-edit': () => 'Change this site',
  'cli-sites': () => 'each site: how to get there, find its boxes, and what came of it in past seasons',
  'cli-sites-site': () => 'only this site',
  'page-earlier-answer': ({ tables }) =>
    tables === 0
      ? 'Nothing of past seasons is kept yet. A table with a line a box will do: CSV or .xlsx.'
      : `${whole('en', tables)} ${tables === 1 ? 'table is' : 'tables are'} kept.`,
  'page-earlier-file': () => 'Table (CSV or .xlsx)',
  'page-earlier-read': () => 'See what it says',
  'page-earlier-take': () => 'Keep it',
  'page-earlier-withdraw': () => 'Take it out',
  'page-earlier-season': () => 'season',
  'page-earlier-site': () => 'site',
  'page-earlier-box': () => 'box',
  'page-earlier-lot': () => 'lot',
  'page-earlier-planted': () => 'planted',
  'page-earlier-lifted': () => 'lifted',
  'page-earlier-eggs': () => 'eggs',
  'page-earlier-empty': () => 'empty',
  'page-earlier-dead': () => 'dead',
  'page-earlier-note': () => 'note',
  'page-earlier-one': ({ file, boxes }) => `${file}: ${whole('en', boxes)} boxes`,
};
