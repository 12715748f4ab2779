import type { Certainty, SpellKind } from '../../../forecasting/spells/spell.js';
import type { MessagesRefusedWords } from '../../messages/refused.js';
import type { DeliveryWords, FeedWords, LetterWords } from '../../messages/words.js';
import type { NetworkWords } from '../../network/index.js';
import { decimal, list, longDay, percent, whole } from '../format.js';

type Words = LetterWords & DeliveryWords & FeedWords & NetworkWords & MessagesRefusedWords;

const n = (count: number) => whole('en', count);
const day = (number: number) => longDay('en', number);
const counted = (count: number, one: string, many: string) =>
  count === 1 ? `one ${one}` : `${n(count)} ${many}`;
const span = (hours: number) =>
  hours < 72 ? counted(Math.round(hours), 'hour', 'hours') : `${n(hours / 24)} days`;
/** A few by name, the others by number. */
const boxes = (names: readonly string[]) => {
  if (names.length > 6) return `${counted(names.length, 'box', 'boxes')} (${names.slice(0, 4).join(', ')} …)`;
  return names.length === 1 ? `box ${names[0]}` : `boxes ${list('en', names)}`;
};

const kinds: Readonly<Record<SpellKind, string>> = {
  'too-warm': 'water too warm',
  freezing: 'freezing',
  'sudden-change': 'sudden change of temperature',
  'too-cold': 'water too cold',
  exposure: 'possibly out of the water or frozen in',
  freshet: 'freshet',
  'break-up': 'midwinter break-up',
  'low-water': 'very low water',
};
const changes = {
  opened: '',
  worsened: 'Worse: ',
  ended: 'Over: ',
  confirmed: 'Confirmed: ',
  withdrawn: 'Taken back: ',
  past: 'Found afterwards: ',
} as const;
const certainties: Readonly<Record<Certainty, string>> = {
  measured: 'measured',
  estimated: 'worked out from other stations, not measured',
  possible: 'possible: nobody measured it',
};
const lacking: Readonly<Record<string, string>> = {
  name: 'A name is needed, at most 80 characters.',
  email: 'That is no e-mail address.',
  webhook: 'The webhook has to be an http or https address without a password in it.',
  quiet: 'Quiet hours are two times of day, like 21:00 and 07:00.',
};

/** What messages say, and what came of sending them and of asking feeds, in English. */
export const messages: { [Code in keyof Words]: (words: Words[Code]) => string } = {
  'letter-subject': ({ group, head, more }) =>
    `${group}: ${head}${more === 0 ? '' : ` (and ${n(more)} more ${more === 1 ? 'item' : 'items'})`}`,
  'letter-dear': ({ name }) => `${name},`,
  'letter-several': ({ things }) => `this message tells of ${n(things)} things.`,
  'letter-further': ({ things }) => `And ${n(things)} more of the same; every one stands on the pages.`,
  'letter-means': () => 'What it means',
  'letter-might': () => 'What one might do',
  'letter-cautions': () => 'Cautions',
  'letter-acknowledge': () => 'I have seen it',
  'letter-pages': () => 'Open the season',
  'letter-why': ({ group }) => `You get this because ${group} wrote you down for it.`,
  'letter-unsubscribe': () => 'Unsubscribe',
  'letter-chart': ({ box }) =>
    `The water of box ${box}: five weeks before this message (red line) and three after`,
  'letter-chart-spell': ({ station }) => `The water at ${station} around that spell`,
  'letter-chart-key': () =>
    'Unbroken line: measured. Dashes: filled from other stations. Dots: projected. The band holds 8 times in 10.',
  'letter-chart-axis': () => 'daily mean (°C)',
  'letter-spell-head': ({ kind, severity, certainty, change, boxes: names, station }) => {
    const what = `${kinds[kind]}, ${names.length === 0 ? station : boxes(names)}`;
    const certain = certainty === 'measured' || change === 'withdrawn' || kind === 'exposure';
    const possible = certain ? '' : 'possible ';
    const name =
      severity !== 'lethal' ? possible : kind === 'exposure' ? 'urgent: ' : `${possible}lethal spell: `;
    const said = `${name}${what}`;
    return changes[change] === ''
      ? `${said.slice(0, 1).toUpperCase()}${said.slice(1)}`
      : `${changes[change]}${said}`;
  },
  'letter-spell-from': () => 'from',
  'letter-spell-to': () => 'to',
  'letter-spell-peak': () => 'furthest',
  'letter-spell-hours': () => 'hours',
  'letter-spell-beyond': () => 'beyond the limit',
  'letter-spell-beyond-value': ({ degreeHours }) => `${decimal('en', degreeHours, 1)} degree-hours`,
  'letter-spell-station': () => 'station',
  'letter-spell-sources': ({ sources }) => `Sources: ${sources.join('; ')}.`,
  'letter-spell-boxes': () => 'boxes',
  'letter-spell-eggs': () => 'eggs exposed',
  'letter-spell-stages': () => 'stages they may be in, likeliest first',
  'letter-spell-known': () => 'how it is known',
  'letter-spell-certainty': ({ certainty, chance }) =>
    `${certainties[certainty]}${chance === null ? '' : `, chance ${percent('en', chance)}`}`,
  'letter-spell-still': () => 'still running at the last reading',
  'letter-spell-means': ({ kind, certainty, change }) => {
    if (change === 'withdrawn') return 'A later download does not show it. Nothing is to be done about it.';
    if (kind === 'exposure')
      return 'The logger in or at this box reads as if it lay in air or ice. The box may be out of the water or frozen in, or only the logger has come loose. Until a person has looked, nobody knows.';
    if (kind === 'freshet' || kind === 'break-up' || kind === 'low-water')
      return 'The gauge shows it; what it did to the boxes nobody measured. No mortality is worked out from it.';
    const over = change === 'ended' || change === 'past' ? ' It is over.' : '';
    return certainty === 'measured'
      ? `Measured water passed the limit above for a stage these eggs may be in, by more than the logger’s accuracy. Hours beyond a limit say how severe it was, not how many eggs died.${over}`
      : `Water that was not measured here, but worked out from other stations or projected, passes the limit above for a stage these eggs may be in. The next download confirms it or takes it back.${over}`;
  },
  'letter-spell-might': ({ kind, change }) => {
    if (change === 'withdrawn') return 'Nothing.';
    if (kind === 'exposure')
      return 'When ice and water are safe, look from the bank whether the box is under water, and settle it on the page. Do not open the box.';
    if (kind === 'freshet' || kind === 'break-up' || kind === 'low-water')
      return 'When the water is safe again, look whether the boxes still lie where they were.';
    return 'Look at the box and its neighbours on the pages, read a logger if one can be reached safely, and ask the biologist before anything is moved or opened.';
  },
  'letter-window-head': ({ stage, days, later, boxes: count }) =>
    `The window of ${stage} moved by up to ${counted(days, 'day', 'days')} ${later ? 'later' : 'earlier'} (${counted(count, 'box', 'boxes')})`,
  'letter-window-row': ({ boxes: names, before, after }) =>
    `${boxes(names)}: half of the eggs by ${day(after)}, before ${day(before)}`,
  'letter-window-means': () =>
    'New readings, or days that passed otherwise than expected, changed what is known of the water. The dates on the pages and in the calendar have moved with it.',
  'letter-window-might': () => 'Look whether a visit, a crew or a permit hangs on the old date.',
  'letter-stage-head': ({ stage, boxes: names }) => `${stage} is probably reached: ${boxes(names)}`,
  'letter-stage-when': ({ first, last }) =>
    first === last
      ? `Half of the eggs are reckoned to have passed it on ${day(first)}.`
      : `Half of the eggs are reckoned to have passed it between ${day(first)} and ${day(last)}.`,
  'letter-stage-means': ({ stage }) =>
    `The water since fertilisation adds up to what ${stage} needs for the median egg. Nobody has seen it; the window on the pages says how sure it is.`,
  'letter-stage-might': ({ stage }) =>
    `If eggs of the same lot can be seen without opening a box (in a hatchery tray, say), look, and note ${stage} as observed: it sharpens every later window.`,
  'letter-lifting-head': ({ day: on, inDays }) =>
    inDays === 0
      ? 'The lifting window is open today'
      : `The lifting window nears: ${day(on)}, in ${counted(inDays, 'day', 'days')}`,
  'letter-lifting-chance': ({ chance, boxes: count }) =>
    `${counted(count, 'box', 'boxes')} in the plan; the chance that every box is within both stated levels on its day is ${percent('en', chance)}.`,
  'letter-lifting-means': ({ approved }) =>
    approved ? 'The plan is approved.' : 'The plan is a draft until a person approves it.',
  'letter-lifting-might': () =>
    'Open the plan, see what a day earlier or later costs, ask the biologist, block the days that will not do, and print the sheets.',
  'letter-silent-head': ({ station, hours }) => `${station} has been silent for ${span(hours)}`,
  'letter-silent-says': ({ last, usualHours }) =>
    `Its last reading is of ${last}. Up to ${span(usualHours)} would be usual.`,
  'letter-silent-means': () =>
    'Boxes that lean on this station are forecast from neighbours or past winters meanwhile, with wider windows. Harmful water there would be seen late.',
  'letter-silent-might': () =>
    'See whether the station has power and a connection, or whether its provider has changed something. Nobody need go out on the ice for it.',
  'letter-feed-head': ({ feed, hours }) => `The feed ${feed} has brought nothing new for ${span(hours)}`,
  'letter-feed-says': ({ since }) =>
    `The last new reading came on ${since}. It is tried again, with growing pauses.`,
  'letter-feed-means': () => 'Either nothing is measured any more, or it no longer arrives here.',
  'letter-feed-might': () => 'The page of messages shows what the feed answered last.',
  'letter-gap-head': ({ station }) => `Readings of ${station} are missing for good`,
  'letter-gap-says': ({ feed, from, to }) =>
    `The feed ${feed} was asked for everything since ${from}; what its provider still keeps begins on ${to}.`,
  'letter-gap-means': () =>
    'What lies between has to be filled from other stations, unless somebody kept it. A harmful spell in it cannot be seen.',
  'letter-gap-might': () => 'Ask the provider for the missing stretch as a file, and load it.',
  'letter-weekly-head': ({ day: on }) => `The week to ${day(on)}`,
  'letter-weekly-box': ({ box, stage, windows }) => `${box}: ${stage}${windows === '' ? '' : `; ${windows}`}`,
  'letter-weekly-window': ({ stage, from, to }) => `${stage} ${day(from)} to ${day(to)}`,
  'letter-weekly-lifting': ({ day: on, boxes: count }) =>
    `Lifting: from ${day(on)}, ${counted(count, 'box', 'boxes')} in the plan.`,
  'letter-weekly-water': ({ box, day: on }) => `Water measured until ${day(on)} at ${box}.`,
  'letter-weekly-means': () =>
    'Each stage from the day 5 of 100 eggs are there to the day 95 are, each end with its own uncertainty: the pages have it whole.',
  'letter-weekly-might': () => 'See under each box what would sharpen its windows.',
  'letter-test-head': () => 'A test message',
  'letter-test-says': () =>
    'Somebody pressed “test” on the page of messages. It arrived: so will the others.',
  'delivery-accepted': ({ answer }) => `Accepted: ${answer}`,
  'delivery-smtp-refused': ({ answer }) => `The mail server refuses it for good: ${answer}`,
  'delivery-smtp-later': ({ answer }) => `The mail server says “later”: ${answer}`,
  'delivery-smtp-sign-in': ({ answer }) => `The mail server does not take our name and password: ${answer}`,
  'delivery-smtp-no-tls': ({ host }) =>
    `${host} offers no encryption (STARTTLS): nothing was sent. State smtpSecurity: none only for a server you reach without a network between.`,
  'delivery-smtp-too-slow': ({ host }) => `${host} did not answer in time.`,
  'delivery-no-server': () => 'No mail server is named in the settings (smtpHost): this waits until one is.',
  'delivery-no-address': () => 'This person has neither an e-mail address nor a webhook: nothing was sent.',
  'delivery-here': () => 'Kept in the mailbox of the demonstration.',
  'delivery-stopped': () => 'The service ended while it was being sent: it is sent again.',
  'feed-fresh': ({ readings, unusable }) =>
    `${counted(readings, 'new reading', 'new readings')}${unusable === 0 ? '' : `, ${counted(unusable, 'line', 'lines')} not usable`}.`,
  'feed-nothing-new': ({ unusable }) =>
    `Nothing new in it${unusable === 0 ? '' : `; ${counted(unusable, 'line', 'lines')} not usable`}.`,
  'feed-same': () => 'The same as last time.',
  'feed-refused': ({ why }) => `It is not a download: ${why.en}`,
  'feed-empty': () => 'An empty answer.',
  'feed-no-folder': ({ folder }) => `There is no folder ${folder}, or it cannot be read.`,
  'feed-files': ({ files, readings, refused }) =>
    `${counted(files, 'new file', 'new files')}, ${counted(readings, 'new reading', 'new readings')}${refused === 0 ? '' : `; ${counted(refused, 'file', 'files')} refused`}.`,
  'feed-pushed': ({ readings }) => `${counted(readings, 'new reading', 'new readings')} sent to us.`,
  'network-private': ({ host, address }) =>
    `${host} leads to ${address}, which lies in this machine or the network around it: refused. Name it under privateAddresses in the settings if it is meant.`,
  'network-not-an-address': ({ url }) => `“${url}” is no http or https address.`,
  'network-unknown-host': ({ host }) => `There is no host ${host}, or no network.`,
  'network-refused': ({ host, why }) => `${host} cannot be reached (${why}).`,
  'network-too-slow': ({ host, seconds }) => `${host} did not answer within ${n(seconds)} seconds.`,
  'network-too-large': ({ host, bytes }) => `${host} sent more than ${n(bytes / 1e6)} MB: given up.`,
  'network-broken-off': ({ host }) => `${host} broke off in the middle.`,
  'network-certificate': ({ host, why }) => `The certificate of ${host} is not to be trusted (${why}).`,
  'network-redirects': ({ host, to }) =>
    `${host} redirects to ${to}: not followed. Write the new address down if it is right.`,
  'network-redirects-private': ({ host, to }) =>
    `${host} redirects to ${to}, in this machine or the network around it: refused.`,
  'network-status': ({ host, status }) => `${host} answered ${String(status)}.`,
  'messages-unknown-person': () => 'There is no such person.',
  'messages-bad-person': ({ place }) => lacking[place] ?? `This will not do: ${place}.`,
  'feeds-unknown-station': ({ station }) => `The season has no station “${station}”.`,
  'feeds-no-readings': () => 'There is no reading in it that can be used.',
};
