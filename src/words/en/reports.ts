import type { ClosingWords, DataWords, ReportFaceWords, ReportWords } from '../../reports/words.js';
import { decimal, list, longDay, percent, shortDay, whole, writtenDay } from '../format.js';
import { byWhom, whoFirst } from '../somebody.js';
import { stageInEnglish } from '../stages.js';

type Phrases<Words> = { [Code in keyof Words]: (words: Words[Code]) => string };

const onDay = (date: string) => writtenDay('en', date);
const capital = (text: string) => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
const n = (count: number) => whole('en', count);
const day = (at: number) => longDay('en', at);
const pc = (of: number) => percent('en', of, of > 0 && of < 0.1 ? 1 : 0);
const between = (from: number, to: number) => `${pc(from)} to ${pc(to)}`;
const boxes = (count: number) => (count === 1 ? 'one box' : `${n(count)} boxes`);
const many = (count: number, one: string, more = `${one}s`) => `${n(count)} ${count === 1 ? one : more}`;
const names = (of: readonly string[], more: number) =>
  more > 0 ? `${of.join(', ')} and ${n(more)} more` : list('en', of);
const date = (at: number | null) => (at === null ? 'no date' : shortDay('en', at));
const figure = (of: number | null) => (of === null ? 'not known' : decimal('en', of, of % 1 === 0 ? 0 : 1));

const kinds: Readonly<Record<string, string>> = {
  'too-warm': 'too warm',
  freezing: 'freezing',
  'sudden-change': 'sudden change',
  'too-cold': 'too cold after fertilisation',
  exposure: 'possibly out of the water or frozen in',
  freshet: 'freshet',
  'break-up': 'midwinter break-up',
  'low-water': 'low water',
};
const certainties: Readonly<Record<string, string>> = {
  measured: 'measured',
  estimated: 'estimated',
  possible: 'possible, nobody measured it',
};
const severities: Readonly<Record<string, string>> = {
  lethal: 'lethal',
  'lowers-survival': 'lowers survival',
  watch: 'watch',
  event: 'event',
};

const ones: Readonly<Record<string, string>> = { site: 'site', lot: 'lot', parent: 'parent', year: 'season' };

/** A season without a lot of eggs has no years, and an empty folder no name (src/group/unnamed-season.ts). */
const NO_EGGS = '-';
function headed(group: string, season: string, how: string): string {
  const what = season === NO_EGGS ? `season without eggs yet${how}` : `season ${season}${how}`;
  return group === '-' ? capital(what) : `${group}: ${what}`;
}

const report: Phrases<ReportWords> = {
  'report-title': ({ group, season }) => headed(group, season, ''),
  'report-funder-title': ({ group, season }) => headed(group, season, ' on one page'),
  'report-permits-title': ({ group, season }) => headed(group, season, ' by permit'),
  'report-made': ({ made, asOf }) => `Printed ${made}; figures as they stood on ${day(asOf)}.`,
  'report-site-winters': () => 'Winters of the same site, season by season',
  'report-site-winters-note': () =>
    'Medians over the boxes of a site; spells and events counted once, however many boxes they touched. Two winters that differ in survival differ in more than this table shows.',
  'report-frozen': ({ by, day: at }) =>
    `This season was closed on ${day(at)}${by === null ? '' : ` by ${by}`}: its figures, tables and method are kept as they were.`,
  'report-open': () => 'This season is not closed: its figures may still change.',
  'report-short-survival': ({ share, from, to, boxes: count, seen, of }) =>
    `At most ${pc(share)} of the eggs came out of the box (${between(from, to)}): ${n(seen)} of ${n(of)} in ${boxes(count)}.`,
  'report-short-few': ({ boxes: count, seen, of, lowest, highest }) =>
    `At most ${n(seen)} of ${n(of)} eggs came out of ${boxes(count)}; the boxes range from ${pc(lowest)} to ${pc(highest)}.`,
  'report-short-one': ({ share, from, to, seen, of }) =>
    `At most ${n(seen)} of ${n(of)} eggs came out of the one box counted: ${pc(share)} (${between(from, to)}).`,
  'report-short-none': () => 'No box has been counted yet, so nothing is known of survival.',
  'report-upper': () =>
    'Survival from empty compartments is an upper figure: an empty compartment held an egg that left, or one that is gone.',
  'report-gone': ({ gone, share }) =>
    gone === 1
      ? `One box was not found. If none of its eggs came through, it would be ${pc(share)}.`
      : `${boxes(gone)} were not found. If none of their eggs came through, it would be ${pc(share)}.`,
  'report-not-counted': ({ boxes: of, more }) => `Not counted, and in no figure: ${names(of, more)}.`,
  'report-common': () =>
    'What is usually said: boxes 70–80%, eggs in the wild about 10% (common practice, no source). Neither was measured here.',
  'report-done': () => 'What was done',
  'report-done-sentence': ({ boxes: count, sites, planted, lots, females, males }) =>
    `${n(planted)} eggs of ${many(lots, 'lot')} went into ${boxes(count)} at ${many(sites, 'site')}${females + males > 0 ? `; broodstock: ${many(females, 'female')} and ${many(males, 'male')}` : ''}.`,
  'report-people': ({ people, visits }) =>
    `${visits === 0 ? 'No visit' : many(visits, 'visit')} written down${people === 0 ? '' : `, ${visits === 0 ? 'but counts ' : ''}with ${people === 1 ? 'one name' : many(people, 'different name')} of people or crews`}.`,
  'report-hours': ({ hours, visits, of }) =>
    `${figure(hours)} ${hours === 1 ? 'hour' : 'hours'} at the sites, from the ${n(visits)} of ${n(of)} visits whose hours were written down.`,
  'report-hours-none': () => 'Nobody wrote down how many hours the visits took.',
  'report-eggs': () => 'Broodstock and eggs',
  'report-winter': () => 'The winter at each box',
  'report-winter-note': ({ freezing }) =>
    `From planting until the box was lifted. A day at freezing is one whose mean is at most ${decimal('en', freezing, 1)} °C (ours); water at 0 °C for months is a normal winter. Temperature is not the only thing that kills eggs.`,
  'report-windows': () => 'Windows predicted, and what came',
  'report-windows-note': () =>
    'Median day of each stage, as the forecast stood on the days named, with the interval meant to hold 8 times in 10; last, the day the finished record gives. That day is worked out from water, not seen.',
  'report-score': ({ day: at, stages, error, bias, held }) =>
    `${day(at)}: off by ${decimal('en', error, 1)} days on average over ${many(stages, 'stage')} still to come (${Math.abs(bias) < 0.05 ? 'neither early nor late' : `${decimal('en', Math.abs(bias), 1)} days ${bias > 0 ? 'late' : 'early'}`}); ${pc(held)} of the 80% intervals held the day.`,
  'report-score-none': () => 'No window that stood in those months can be judged yet.',
  'report-seen': () => 'What people saw, beside what had been said',
  'report-seen-none': () => 'Nothing was seen or counted that the windows could be held against.',
  'report-lifted-sum': ({ days, boxes: of, within, early, late }) =>
    `Alevins still in ${boxes(of)} when opened, as the ${days.length === 1 ? 'forecast' : 'forecasts'} of ${list(
      'en',
      days.map((at) => shortDay('en', at)),
    )} had it: ${n(within)} within the 80% interval, ${n(early)} further on, ${n(late)} behind.`,
  'report-stock': ({ table, lots, adjustment, spread, weight }) =>
    `Against the table ${table}, this season’s ${many(lots, 'lot')} needed ${decimal('en', Math.abs(adjustment) * 100, 1)}% ${adjustment >= 0 ? 'more' : 'less'} of the way, give or take ${decimal('en', spread * 100, 1)}% (one standard deviation); the lots’ own showing weighs ${pc(weight)}, the published table the rest.${Math.abs(adjustment) < 2 * spread ? ' That cannot be told from no difference.' : ''}`,
  'report-stock-none': () =>
    'No stage was counted in a lot this season, so nothing can be said of how this stock differs from its table.',
  'report-stock-lifting': () =>
    'Counts at lifting only bound hatch, and only where living eggs were told from alevins: they say nothing here.',
  'report-spells': () => 'Spells and events',
  'report-spells-none': () => 'No spell was found.',
  'report-spells-not-judged': () =>
    'Spells were not judged for this report: none shown does not mean none came.',
  'report-spell': ({ kind, from, to, hours, peak, boxes: of, certainty, severity }) =>
    `${capital(kind)}, ${from === to ? shortDay('en', from) : `${shortDay('en', from)} to ${shortDay('en', to)}`}, ${n(hours)} h${peak === null ? '' : `, to ${decimal('en', peak, 1)} °C`}: ${of.join(', ')} (${severity}; ${certainty}).`,
  'report-lifting': () => 'Lifting',
  'report-lifting-none': () => 'No box has been lifted.',
  'report-lifting-day': ({ day: at, boxes: of, more }) => `${day(at)}: ${names(of, more)}.`,
  'report-lifting-out': ({ boxes: of, more }) => `Still in the water: ${names(of, more)}.`,
  'report-lifting-approved': ({ by, days }) =>
    `${whoFirst('en', by)} approved: ${list(
      'en',
      days.map((at) => shortDay('en', at)),
    )}.`,
  'report-survival': () => 'Survival',
  'report-survival-boxes': () => 'Box by box',
  'report-survival-groups': () => 'Boxes together',
  'report-survival-chart': () => 'Out of the box, at most, each with its 95% interval',
  'report-survival-chart-common': () =>
    'The shaded band is what is usually said of boxes, 70–80% (common practice).',
  'report-share': ({ share, from, to }) => `${pc(share)} (${between(from, to)})`,
  'report-share-of': ({ share, from, to, seen, of }) =>
    `${n(seen)} of ${n(of)}: ${pc(share)} (${between(from, to)})`,
  'report-range': ({ seen, of, lowest, highest }) =>
    `${n(seen)} of ${n(of)}; boxes ${pc(lowest)} to ${pc(highest)}`,
  'report-stage-range': ({ lower, upper }) =>
    pc(lower) === pc(upper) ? `${pc(upper)}` : `${pc(lower)}–${pc(upper)}`,
  'report-counting-error': ({ eggs }) =>
    `Two people’s counts of the same box differ by ${decimal('en', eggs, 1)} eggs (one standard deviation of a count): each box’s interval is widened by it.`,
  'report-compare': () => 'What the numbers can tell, and what they cannot',
  'report-compare-none': () => 'Nothing can be compared yet.',
  'report-compare-apart': ({ higher, lower, pairs, corrected }) =>
    `More came out at ${higher} than at ${lower} (p ${corrected < 0.001 ? '< 0.001' : `= ${decimal('en', corrected, 3)}`}, corrected for ${many(pairs, 'comparison')}).`,
  'report-compare-no-order': ({ by, names: of, more, others }) =>
    others
      ? `Of the other pairs of ${by} (${names(of, more)}) no order can be given: their intervals overlap, or the difference may be chance.`
      : `Of the ${by} ${names(of, more)} no order can be given: their intervals overlap, or the difference may be chance.`,
  'report-group': ({ by, name }) => `${ones[by] ?? by} ${name}`,
  'report-compare-not-possible': ({ by }) =>
    `The ${by} cannot be compared: where each has one box, nothing tells how far boxes of one differ by themselves.`,
  'report-site-is-lot': () =>
    'Each lot lay at one site only: whether the place or the eggs made a difference cannot be told. Next season, put every lot at two sites or more.',
  'report-few-at-site': ({ sites, more }) =>
    `Two boxes at one site, or one, cannot tell site from lot, nor a poor place from a poor day (${names(sites, more)}).`,
  'report-years': () => 'Beside earlier seasons',
  'report-years-none': () => 'There is no earlier season with counts to set beside this one.',
  'report-year-source-tallies': () => 'tallies of this season',
  'report-year-source-closed': () => 'closed season',
  'report-year-source-table': () => 'table of past seasons',
  'report-methods': () => 'Methods and sources',
  'report-method-version': ({ method }) => `Method ${n(method)} of this report.`,
  'report-method-wilson': () =>
    'One box: Wilson’s 95% interval (Wilson 1927; Newcombe 1998, Statistics in Medicine 17:857–872).',
  'report-method-groups': () =>
    'Boxes together: quasi-binomial logit with t below twenty boxes (McCullagh & Nelder 1989), beta-binomial by maximum likelihood from there (Crowder 1978, Applied Statistics 27:34–37). Both own up to boxes that differ more than chance; with two or three boxes, counts and range say more.',
  'report-method-compare': () =>
    'Comparisons: every pair, corrected by Holm (1979, Scandinavian Journal of Statistics 6:65–70).',
  'report-method-fertilised': () =>
    'Of the fertilised: divided by the control sample’s fertilisation rate, its error carried (Abbott 1925; Katz and others 1978: both from memory).',
  'report-method-windows': () =>
    'Windows: rate summation day by day over measured, filled and projected water; the method is in docs/forecast-method.md.',
  'report-method-sources': ({ table }) => `Sources of the table ${table}`,
  'report-map': () => 'Where',
  'report-map-coarse': () =>
    'Sites from their coordinates, rounded to about ten kilometres: where wild fish lie is not everybody’s business.',
  'report-map-exact': () =>
    'Sites from their coordinates. Think before passing this on: where wild fish lie is not everybody’s business.',
  'report-map-none': () => 'No site states its coordinates.',
  'report-permits': () => 'By permit',
  'report-permits-none': () => 'No permit is written down in this season.',
  'report-funder-did': () => 'What we did',
  'report-funder-came': () => 'What came of it',
  'report-funder-sites': ({ shown, of }) =>
    `Sites drawn: the first ${n(shown)} of ${n(of)}; the season’s report has them all.`,
  'report-funder-honest': () => 'What this does not tell',
  'report-funder-windows': ({ error, day: at }) =>
    `Stage dates forecast by ${day(at)} were off by ${decimal('en', error, 1)} days on average.`,
  'report-by-all': () => 'all',
  'report-by-site': () => 'sites',
  'report-by-lot': () => 'lots',
  'report-by-parent': () => 'parents',
  'report-by-year': () => 'seasons',
  'report-measure-stage': ({ stage }) => `to ${stageInEnglish(stage).inSentence}, at most`,
  'report-measure-out': () => 'out of the box, at most',
  'report-col-lot': () => 'lot',
  'report-col-fertilised': () => 'fertilised',
  'report-col-parents': () => 'parents',
  'report-col-eggs': () => 'eggs',
  'report-col-planted': () => 'planted',
  'report-col-control': () => 'control sample',
  'report-col-units': () => 'degree-days',
  'report-col-freezing': () => 'days at freezing',
  'report-col-range': () => 'daily means, °C',
  'report-col-site': () => 'site',
  'report-col-boxes': () => 'boxes',
  'report-col-spells': () => 'spells',
  'report-col-exposures': () => 'exposures',
  'report-col-gauge': () => 'gauge events',
  'report-col-silt': () => 'silt, mm',
  'report-col-depth': () => 'depth, m',
  'report-col-days': () => 'days measured / filled / projected',
  'report-col-record': () => 'by the record',
  'report-col-measure': () => 'how far',
  'report-col-with-gone': () => 'with boxes not found',
  'report-col-found': () => 'boxes found',
  'report-col-group': () => 'which',
  'report-col-season': () => 'season',
  'report-col-source': () => 'from',
  'report-col-permit': () => 'permit',
  'report-col-authority': () => 'authority',
  'report-col-valid': () => 'valid',
  'report-col-due': () => 'report due',
  'report-col-adults': () => 'adults',
  'report-col-lifted': () => 'boxes lifted',
  'report-col-counted': () => 'counted',
  'report-col-of-fertilised': () => 'of the fertilised',
  'report-box-gone': () => 'not found',
  'report-every-site': () => 'every site',
  'report-kind': ({ kind }) => kinds[kind] ?? kind,
  'report-certainty': ({ certainty }) => certainties[certainty] ?? certainty,
  'report-severity': ({ severity }) => severities[severity] ?? severity,
};

const data: Phrases<DataWords> = {
  'data-title': ({ group, season }) => `${group}, season ${season}: survival and the winter at each box`,
  'data-about': () =>
    'Counts and figures of one season. Survival from empty compartments is an upper figure. No coordinates are given. Dates are local dates, shares 0 to 1, an empty cell is not known.',
  'data-boxes': () => 'What was counted in each box or part of a box',
  'data-groups': () => 'Survival of boxes together, with 95% intervals',
  'data-winters': () => 'The winter at each box, from planting to lifting',
  'data-windows': () => 'Median stage days as the forecast stood, and by the finished record',
  'data-spells': () => 'Runs of harmful water and events',
  'data-lots': () => 'Eggs fertilised together',
  'data-years': () => 'Survival out of the box by season',
  'data-permits': () => 'What was done under each permit',
  'data-season': () => 'Season: years of fertilisation and of lifting',
  'data-box': () => 'Box, as the group names it',
  'data-part': () => 'Part of the box; empty where the whole was counted',
  'data-site': () => 'Site, as the group names it',
  'data-lot': () => 'Lot; empty where several lay together',
  'data-planted': () => 'Eggs planted, or counted where more were counted',
  'data-found': () => 'Whether the box was found',
  'data-empty': () => 'Empty compartments: eggs that left or are gone; mean where several counted',
  'data-dead': () => 'Dead eggs and alevins; mean where several counted',
  'data-alive': () => 'Living eggs and alevins still in the box; mean where several counted',
  'data-counters': () => 'People who counted',
  'data-share': () => 'Share that came so far, an upper figure',
  'data-from': () => 'Lower end of the 95% interval of the share',
  'data-to': () => 'Upper end of the 95% interval of the share',
  'data-of-fertilised': () => 'Share of the eggs that the control sample shows were fertilised',
  'data-at-least': ({ stage }) => `Eggs that came to ${stage} for certain`,
  'data-at-most': ({ stage }) => `Eggs that may have come to ${stage}`,
  'data-by': () => 'What the boxes are taken together by: all, site, lot, parent or year',
  'data-name': () => 'Which of them; empty for all boxes',
  'data-measure': () => 'How far: eye-up, hatch, or out of the box',
  'data-group-boxes': () => 'Boxes found and counted',
  'data-gone': () => 'Boxes or parts not found',
  'data-seen': () => 'Eggs that came so far, at most',
  'data-of': () => 'Eggs planted in those boxes',
  'data-method': () => 'How the interval was made',
  'data-lowest': () => 'Lowest share of a box',
  'data-highest': () => 'Highest share of a box',
  'data-share-with-gone': () => 'Share where boxes not found count as eggs that did not come through',
  'data-units': () => 'Thermal units above the table’s base, of the lot with the most eggs',
  'data-freezing': () => 'Days whose mean was at most 0.2 °C',
  'data-coldest': () => 'Lowest daily mean',
  'data-warmest': () => 'Highest daily mean',
  'data-measured': () => 'Days measured',
  'data-filled': () => 'Days filled from other stations',
  'data-projected': () => 'Days projected',
  'data-spell-count': () => 'Spells of harmful temperature',
  'data-spell-hours': () => 'Hours of those spells',
  'data-exposures': () => 'Possible times out of the water or frozen in',
  'data-gauge': () => 'Events at the gauge: freshets, break-ups, low water',
  'data-depth': () => 'Depth of the water',
  'data-velocity': () => 'Velocity of the water',
  'data-silt': () => 'Silt in the box at lifting; mean where several measured',
  'data-stage': () => 'Stage of the eggs',
  'data-as-of': () => 'Day on which the forecast stood so',
  'data-p10': () => 'Median day, early end of the 80% interval',
  'data-p50': () => 'Median day',
  'data-p90': () => 'Median day, late end of the 80% interval',
  'data-by-record': () => 'Median day by the finished record of water; worked out, not seen',
  'data-spell': () => 'The spell’s own name',
  'data-kind': () => 'What kind',
  'data-severity': () => 'How bad: lethal, lowers-survival, watch or event',
  'data-certainty': () => 'Measured, estimated or possible',
  'data-spell-from': () => 'When it began',
  'data-spell-to': () => 'When it ended',
  'data-hours': () => 'How long',
  'data-peak': () => 'Furthest temperature',
  'data-spell-boxes': () => 'Boxes it touched, with spaces between',
  'data-fertilised': () => 'Day of fertilisation',
  'data-parents': () => 'Parents as the group numbers them, with spaces between',
  'data-eggs': () => 'Eggs fertilised',
  'data-lot-planted': () => 'Eggs planted in boxes',
  'data-counted-how': () => 'How the eggs were counted',
  'data-table': () => 'Development table',
  'data-control-fertilised': () => 'Fertilised eggs in the control sample',
  'data-control-of': () => 'Eggs looked at in the control sample',
  'data-year-source': () => 'Where it is from: tallies, a closed season, a table of past seasons',
  'data-permit': () => 'Permit number',
  'data-authority': () => 'Authority',
  'data-valid-from': () => 'First day it is valid',
  'data-valid-to': () => 'Last day it is valid',
  'data-due': () => 'Day the report to the authority is due',
  'data-adults': () => 'Adults taken',
  'data-permit-planted': () => 'Eggs planted under it',
  'data-permit-boxes': () => 'Boxes planted under it',
  'data-permit-lifted': () => 'Boxes lifted under it',
  'data-permit-counted': () => 'Compartments counted',
};

const closing: Phrases<ClosingWords> = {
  'close-twice': ({ season, by, day: at }) =>
    `Season ${season} was closed on ${at} by ${byWhom('en', by)}: it is closed once and stays as it was. Make the next season from it.`,
  'close-boxes-out': ({ boxes: of, more }) =>
    `The season cannot be closed while boxes are in the water: ${names(of, more)}. Tally each, or tally it as not found.`,
  'close-no-tally': () =>
    'The season has no tally at all: there is nothing to close it on. Tally a box, or tally it as not found.',
  'close-no-eggs': () => 'The season has no lot of eggs: there is nothing to close.',
  'close-unknown': ({ season, seasons }) =>
    `There is no season ${season}. There ${seasons.length === 1 ? 'is' : 'are'}: ${seasons.join(', ')}.`,
  'close-moved': () => 'The season was changed while it was being closed: nothing was kept. Close it again.',
  'report-unwritable': ({ file }) =>
    `${file} cannot be written: name a folder with --out that you may write to.`,
  'close-done': ({ season }) =>
    `Season ${season} is closed. Its figures, tables and reports are kept as they are, whatever is loaded later.`,
  'close-listed': ({ season, by, day: at }) => `${season}: closed on ${at} by ${byWhom('en', by)}`,
  'close-listed-none': () => 'No season has been closed.',
  'late-none': () => 'Nothing that was loaded since would change its figures.',
  'late-some': ({ changes }) =>
    `What was loaded since would have changed ${many(changes, 'figure')}; the closed season stays as it was.`,
  'late-units': ({ box, was, now }) => `${box}: ${figure(now)} degree-days instead of ${figure(was)}.`,
  'late-freezing': ({ box, was, now }) =>
    `${box}: ${figure(now)} days at freezing instead of ${figure(was)}.`,
  'late-stage': ({ box, lot, stage, was, now }) =>
    `${box}, lot ${lot}: ${stageInEnglish(stage).inSentence} on ${date(now)} by the record, instead of ${date(was)}.`,
  'next-not-closed': ({ season }) =>
    season === null
      ? 'The season has no lot of eggs yet: the next one takes its place only once it is closed.'
      : `Close season ${season} first: the next one takes its place.`,
  'next-made': ({ season }) => `The season after ${season} stands: plan it from here.`,
  'next-preview': ({ season }) => `The season after ${season} would be this; nothing was changed.`,
  'next-carried': ({ sites, stations, loggers, people }) =>
    `Carried over: ${many(sites, 'site')}, ${many(stations, 'station')}, ${many(loggers, 'logger')}; ${many(people, 'name')} in last season’s notes.`,
  'next-left': ({ boxes: count, lots, visits, tallies, blocked }) =>
    `Left in the closed season: ${list('en', [
      boxes(count),
      many(lots, 'lot'),
      many(visits, 'visit'),
      many(tallies, 'tally', 'tallies'),
      ...(blocked === 0 ? [] : [many(blocked, 'entry of blocked days', 'entries of blocked days')]),
    ])}.`,
  'next-battery': ({ logger, since }) => `${logger}: new battery; it has lain since ${onDay(since)}.`,
  'next-memory': ({ logger, day: at }) => `${logger}: its memory is full by ${onDay(at)}.`,
  'next-calibration': ({ logger, last }) =>
    last === null
      ? `${logger}: ice bath; none is written down.`
      : `${logger}: ice bath; the last was for the deployment of ${onDay(last)}.`,
  'next-clock': ({ logger, fast }) =>
    `${logger}: set its clock; it was ${n(Math.abs(fast))} s ${fast > 0 ? 'fast' : 'slow'}.`,
  'next-lost': ({ logger }) => `${logger}: was lost and is not carried over.`,
  'next-report-due': ({ number, day: at }) => `Permit ${number}: report due on ${onDay(at)}.`,
  'next-permit-ends': ({ number, day: at }) =>
    `Permit ${number}: its last day is ${onDay(at)}; ask for the next.`,
  'next-nothing-due': () => 'Nothing is due.',
};

const face: Phrases<ReportFaceWords> = {
  'page-nav-survival': () => 'Survival',
  'page-nav-report': () => 'Report',
  'page-report-which': () => 'Which season',
  'page-report-current': ({ season }) => `${season}, open`,
  'page-report-closed': ({ season }) => `${season}, closed`,
  'page-report-funder': () => 'One page for a funder',
  'page-report-permits': () => 'By permit',
  'page-report-survival': () => 'Survival',
  'page-report-season': () => 'Season report',
  'page-report-file': ({ file }) => file,
  'page-report-files': () => 'As files',
  'page-report-map': () => 'Map',
  'page-report-map-coarse': () => 'coarse',
  'page-report-map-exact': () => 'exact',
  'page-report-map-none': () => 'none',
  'page-report-close': () => 'Close the season',
  'page-report-close-what': () =>
    'Closing keeps every figure, table and report as it stands, so that it can be printed again in years. It cannot be undone.',
  'page-report-close-by': () => 'Closed by (named in the report)',
  'page-report-close-do': ({ season }) => `Close season ${season}`,
  'page-report-late': () => 'What came late',
  'page-report-next': () => 'Next season',
  'page-report-next-answer': ({ season, due }) =>
    `The season after ${season} can begin; ${due === 0 ? 'nothing is due before it' : `${many(due, 'thing')} to do before it`}.`,
  'page-report-next-close': () =>
    'A season is closed at the foot of its report, once every box is tallied, or tallied as not found.',
  'page-report-next-people': () => 'Who was there last season',
  'page-report-next-what': () =>
    'Sites, stations, loggers and tables are carried over; boxes, lots, visits and tallies stay with the closed season.',
  'page-report-next-do': ({ season }) => `Begin the season after ${season}`,
  'page-report-next-due': () => 'Due before it',
  'page-report-next-text': () => 'The season file it would be',
  'page-survival-title': ({ season }) =>
    season === NO_EGGS ? 'Survival: no eggs this season yet' : `Survival, season ${season}`,
  'cli-report': () => 'write the season’s report as HTML, CSV and a data package',
  'cli-report-season': () => 'a closed season, as 2024-2025 (default: the current one)',
  'cli-report-out': () => 'the folder it is written to',
  'cli-report-map': () => 'draw a map of the sites: coarse (about ten kilometres) or exact',
  'cli-report-written': ({ folder, files }) => `Written to ${folder}: ${files.join(', ')}.`,
  'cli-survival': () => 'what survived, by box, site, lot, parent and season',
  'cli-season-close': () => 'close the season: its figures and reports are kept as they are',
  'cli-season-closed': () => 'list closed seasons',
  'cli-season-late': () => 'what was loaded since a season was closed, and what it would have changed',
  'cli-season-next': () => 'make the next season from the closed one',
  'cli-season-close-by': () => 'who closes it, as the report is to name them; nobody where not given',
  'cli-season-id': () => 'a season, as 2024-2025',
};

export const reports: Phrases<ReportWords & DataWords & ClosingWords & ReportFaceWords> = {
  ...report,
  ...data,
  ...closing,
  ...face,
};
