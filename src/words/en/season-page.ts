import type { SeasonProblem, SeasonProblemWords } from '../../season/index.js';
import { capitalised, pathNamed } from '../season-field.js';
import { seasonFields } from './season-fields.js';
import { things } from './season-things.js';

type Sentences = { [Code in keyof SeasonProblemWords]?: (figures: SeasonProblemWords[Code]) => string };

/** What reads otherwise on a page, whose reader sees labels and no keys of a season file. */
export const onPage: Sentences = {
  'season.missing': () => 'This has to be filled in.',
  'season.no-such': ({ thing, id, known }) =>
    known === ''
      ? `There is no ${things[thing]} “${id}” yet.`
      : `There is no ${things[thing]} “${id}”. There are: ${known}.`,
  'season.bad-id': ({ given }) =>
    `“${given}” cannot be a name here: use letters and digits, with - _ . or a space inside, 64 at most (upper-pool).`,
  'season.decimal-comma': ({ given, meant }) => `“${given}” can be read in two ways: write ${meant}.`,
  'season.not-yes-no': ({ given }) => `“${given}” is neither yes nor no.`,
  'season.before-what': () =>
    'The eggs cannot have been in two places: keep the station, the temperature or the other lot.',
  'season.overlapping-deployment': ({ logger, from, other }) =>
    `Logger “${logger}” was put in on ${clock(from)} while it still lay where it was put on ${clock(other)}: one logger lies in one place. Say when it came out.`,
  'season.history-loop': ({ loop }) =>
    `These lots were each kept with the next, and the last with the first (${loop}): say for one of them what water it was in.`,
};

const clock = (moment: string) => moment.slice(0, 16).replace('T', ' ');

/** The thing and the field that a problem lies in: "Box B1, lifted". */
export function placeInWords({ of, path }: SeasonProblem): string {
  const field = pathNamed(seasonFields, of === null ? path : path.slice(2));
  const whose =
    of === null ? [] : [`${things[of.thing]} ${of.id.replace(/T(\d\d:\d\d)[^,]*/g, ' $1')}`.trim()];
  return capitalised([...whose, ...(field === '' ? [] : [field])].join(', '));
}
