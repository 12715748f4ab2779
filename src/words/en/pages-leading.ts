import type { LeadingPageWords } from '../../pages/leading-words.js';
import { percent, significant } from '../format.js';
import { whoFirst } from '../somebody.js';

const one = (value: number) => significant('en', value);
const asRole = { coordinator: 'a coordinator', crew: 'a member of the crew', reader: 'a reader' } as const;

/** The first visit, help and sign-in in English. */
export const pagesLeading: { [Code in keyof LeadingPageWords]: (words: LeadingPageWords[Code]) => string } = {
  'page-first-title': () => 'A first visit',
  'page-first-answer': () =>
    'There is nothing here yet. In one sitting you can set up a station, a lot and a box, load a download and see a window.',
  'page-first-answer-begun': ({ done, of }) => `${done} of ${of} steps are done; the next one is below.`,
  'page-first-answer-done': () => 'Everything is set up: the season page shows the windows.',
  'page-first-sample': () => 'Look at the sample season',
  'page-first-sample-what': () =>
    'An invented river with six boxes and a winter of downloads. It fills this folder: use another folder for your own season.',
  'page-first-sample-do': () => 'Load the sample season',
  'page-first-own': () => 'Begin your own',
  'page-first-own-what': () =>
    'The least there must be. All of it can be changed later, and more added: other stations, lots, boxes, loggers.',
  'page-first-group': () => 'Your group',
  'page-first-group-name': () => 'name of the group',
  'page-first-zone': () => 'time zone, such as America/Halifax',
  'page-first-station': () => 'Where the water is recorded',
  'page-first-station-what': () => 'The place of a logger beside the box, or of the nearest one there is.',
  'page-first-lot': () => 'The eggs',
  'page-first-box': () => 'The box',
  'page-first-curve': () => 'The usual water, where no past winter was recorded',
  'page-first-curve-what': () =>
    'Days to come are worked out from past winters, of this station or of one nearby, which you can load afterwards. Without any, no window comes about until this is stated; it is wider then.',
  'page-first-curve-monthly': () =>
    '°C on the 15th of January to December: twelve figures with spaces between, such as 0 0 0 0.8 8 15 19 19 15.5 10 4 0.3',
  'page-first-curve-do': () => 'State it',
  'page-first-do': () => 'Set it up',
  'page-first-step-season': () => 'A station, a lot and a box',
  'page-first-step-download': () => 'The first download',
  'page-first-step-download-what': () =>
    'A file that came off the logger, as it is. You see what was understood before anything is kept.',
  'page-first-step-past': () => 'Past winters, or a curve',
  'page-first-step-past-what': () =>
    'Days to come are worked out from past winters. Load those of this station, or those of one nearby together with its readings of this autumn, from which it is learned how one follows the other. Where there are none, state the usual water.',
  'page-first-step-window': () => 'A window',
  'page-first-step-window-what': () => 'When the eggs reach each stage, and how sure that is.',
  'page-first-go': () => 'Go on',
  'page-first-where': () => 'Where it works',
  'page-first-where-laptop': () =>
    'On one laptop, without any network: these pages, printed sheets, and the calendar as a file.',
  'page-first-where-server': () =>
    'For phones on the river bank and calendars that renew themselves: a small server with HTTPS, because browsers keep entries off line only over a secure connection. The README has an example.',
  'page-help-title': () => 'Help',
  'page-help-answer': () =>
    'What the words mean, how the numbers come about, and what no number here can decide.',
  'page-help-words': () => 'The words, in both languages',
  'page-help-words-note': () =>
    'The French column is this project’s own until a francophone biologist has read it. Mind “alevin”: in French it commonly means a fry, so the English alevin is “alevin vésiculé” here.',
  'page-help-word-en': () => 'English',
  'page-help-word-fr': () => 'French',
  'page-help-word-meaning': () => 'meaning',
  'page-help-numbers': () => 'How the numbers come about',
  'page-help-numbers-answer': () =>
    'Each day adds what an egg gains in a day at that day’s water; a stage comes when the sum is full.',
  'page-help-window': () => 'Windows',
  'page-help-window-text': () =>
    'For each lot and stage: the day the first eggs (5%) get there, the median egg, and the last (95%). Each has an interval meant to hold 8 times in 10. It holds what is not known: the days to come, the days that were filled, the error the logger carries all winter, the gravel’s difference from the stream, the spread between eggs and between lots, and the table’s own. The same figures always give the same dates.',
  'page-help-progress': () => 'Progress and thermal units',
  'page-help-progress-text': () =>
    'Progress is the fraction of the way to a stage. Every day adds 1/D, where D is how many days the stage takes at that day’s constant temperature under the lot’s development table. Half of the eggs are there when it reaches 1. It is summed day by day, never worked out from the mean of a season. Thermal units are the degree-days above the table’s base.',
  'page-help-old-rule': () => 'The old rule',
  'page-help-old-rule-text': () =>
    'A fixed number of degree-days from fertilisation to hatch, as the group has it. Near 0 °C eggs still develop while degree-days stand still, so in a cold river the rule comes late; beside each window stands what it would have said, and why it differs.',
  'page-help-filled': () => 'Filled days',
  'page-help-filled-text': () =>
    'A day is measured when readings cover at least three quarters of it without a hole of more than six hours. Other days are filled from stations nearby: their relation to this one is found on days both measured, season by season, and judged on days it had not seen. What the relation missed at the ends of the gap fades into it. A download that has not come yet is a long gap.',
  'page-help-projected': () => 'Projected days',
  'page-help-projected-text': () =>
    'Days to come are drawn from past winters of the station, or of neighbours, with today’s departure from normal fading as it has in the past. Where there is no past winter the stated seasonal curve speaks, and the forecast says so.',
  'page-help-record': () => 'A station’s record',
  'page-help-record-text': () =>
    'Every load that stands is read together: where loads overlap, the newest shows, and a withdrawn one shows again what it covered. A long stretch is drawn from the lowest, mean and highest reading of each step of the screen, each step counted from the readings themselves; look closer and every reading is there. A day’s mean is weighted by time over the station’s own standard-time day, so no day has 23 or 25 hours. The count, the first and the last reading are those of the loads as the files gave them.',
  'page-help-understood': () => 'How a download is understood',
  'page-help-understood-text': () =>
    'Encoding, delimiter, decimal mark, headers, columns, unit, order of the dates and the clock’s offset are worked out from what the file says, its pace and its direction in time. What had to be assumed is listed, and where two readings are equally likely you are asked: nothing is guessed. A line that cannot be used is counted, and the first are shown with the reason. A layout the group keeps goes before what the file seems to say. Whether a file moved a window is told by the forecast before and after it; where it overlaps what is there, the largest difference stands beside the count.',
  'page-help-tables': () => 'Development tables',
  'page-help-tables-text': () =>
    'A row says how many days a stage takes at a constant temperature: by a law (a power of the temperature, or thermal units above a base), by days at listed temperatures (between two of them the logarithm of the days runs straight), or as a multiple of another stage. The curve of the chart is that row worked out at every half degree. It is dotted outside the temperatures its source covers. Spread between eggs is the standard deviation of progress within one lot. Every number carries its source, and a mark where it was seen in an abstract only, recalled from memory, common practice, or an estimate of this project. What your own lots have shown is set beside the published row, shrunk by how few lots speak.',
  'page-help-checks': () => 'Checks on readings',
  'page-help-checks-text': () =>
    'Readings are kept as the file gave them. Flags follow the QARTOD manual for temperature in water: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing. Clock and ice-bath corrections and trims are applied when readings are looked at; nothing is rewritten, so a withdrawn load shows again what it covered.',
  'page-help-lifting': () => 'The lifting day',
  'page-help-lifting-text': () =>
    'The same possible winters that give the windows are followed for every box: on each candidate day, the share of its fish that would still be in the box as alevins and the share that would have left the gravel. The chance of a day is the share of possible winters in which both lie within the levels of the group’s rule. The days recommended keep as many boxes as can be within the levels, with the crew, the trips and the blocked days as they are stated; what a day earlier or later costs stands beside them.',
  'page-help-survival': () => 'Survival',
  'page-help-survival-text': () =>
    'The share of a box is its empty compartments over the eggs planted: an upper figure, because an empty compartment held an egg that left or one that is gone. The interval of one box is Wilson’s, 95%. Boxes of one site differ more than chance alone, so boxes together have an interval from how far they differ (quasi-binomial; beta-binomial from twenty boxes on), and with very few boxes only counts and range are given. Groups are compared in pairs and corrected for how many pairs there are (Holm); where no order can be given, none is.',
  'page-help-hindcast': () => 'How good the forecast would have been',
  'page-help-hindcast-text': () =>
    'Each whole past winter of every station is hidden in turn and forecast as it would have been on each date, from the other winters only; beside it the forecast that knows only the winters before. The windows are compared with those the finished record gives: days off on average, to which side, and how often the 80% interval held the day. It measures the water, not whether the development table fits your stock.',
  'page-help-eggs': () => 'Counting eggs',
  'page-help-eggs-text': () =>
    'Eggs of the counted samples over the water they displaced (or their weight), times what the whole lot displaced or weighed. The 95% interval comes from how far the samples lie from their common ratio, with Student’s t; one sample alone cannot say how far off it is. Where every egg is: the count, less what lies in boxes, the control, what was lost and what was left over.',
  'page-help-cautions': () => 'What no number here decides',
  'page-help-cautions-text': () =>
    'A forecast is an estimate. Temperature is not the only thing that kills eggs: silt, oxygen, ice and acid water do too. Never cross ice or wade high water to meet a date. Never open a box while handling kills its eggs. Permits, fish-health rules, the responsible biologist and the local authority decide.',
  'page-help-other-harm': () => 'What else harms eggs',
  'page-help-other-harm-text': ({ silt, oxygen, acid, wading, frozenSolid, alevinsSurvive }) =>
    `No forecast here knows of these. Silt above ${one(silt.harms)}% in the gravel harms, above ${one(silt.hardToOffset)}% it is hard to offset (Can. J. Fish. Aquat. Sci. 61(12), 2004, abstract). Oxygen: ${one(oxygen.water)} mg/L in the water, ${one(oxygen.gravel)} in the gravel (EPA 1986, memory). pH below ${one(acid.eggs)} kills eggs, below ${one(acid.fry)} fry (DFO 2000/050). One wading of a redd just before hatch killed up to ${percent('en', wading)} (Roberts & White 1992, abstract). Boxes froze solid under ${frozenSolid.shallowest} to ${frozenSolid.deepest} cm of flowing water; in those recovered less than ${percent('en', frozenSolid.survived)} survived (brown trout, Laramie River 1975-76, abstract). Alevins of Atlantic salmon survive to ${one(alevinsSurvive)} °C (Ojanguren et al. 1999, abstract).`,
  'page-help-elsewhere-text': ({ plates, redds }) =>
    `What survives elsewhere: in single-egg plates above ${percent('en', plates)} hatched (brown trout, N. Am. J. Fish. Manage. 12:833, abstract); from redds in three Maine streams ${percent('en', redds.least)} to ${percent('en', redds.most)} emerged, ${percent('en', redds.mean)} on average (MacKenzie & Moring 1988). Boxes 70-80%, nature about 10%: common practice, no source.`,
  'page-api-title': () => 'The API',
  'page-api-answer': () => 'Everything the pages and the command line can do, for other programs.',
  'page-api-what': () =>
    'Dates are local dates of the group, instants ISO 8601 in UTC, temperatures in °C. Sentences come in the language of Accept-Language (en, fr). Errors are problem details (RFC 9457). Where the group has accounts, a request shows an API token.',
  'page-api-routes': () => 'Routes',
  'page-api-schemas': () => 'Shapes of what is sent and answered',
  'page-help-api': () => 'For R, Python and other programs: the API',
  'page-meaning-station': () =>
    'a place where something is recorded: stream water, water inside the gravel, air, a hatchery tank, a gauge',
  'page-meaning-quantity': () =>
    'what is recorded: temperature, and where a station has it level or discharge',
  'page-meaning-logger': () => 'the instrument, and the stretch of time it lay at one station',
  'page-meaning-visit': () => 'people at a site on a day, and what they saw',
  'page-meaning-download': () => 'a file that came off a logger',
  'page-meaning-load': () => 'one accepted download; it can be withdrawn',
  'page-meaning-reading': () => 'a value at a moment, with its quality flag',
  'page-meaning-broodstock': () => 'the adults the eggs and milt came from',
  'page-meaning-lot': () => 'eggs fertilised together',
  'page-meaning-site': () => 'where boxes lie',
  'page-meaning-box': () => 'one incubator at one site',
  'page-meaning-fill': () => 'eggs of one lot in one box or part of it',
  'page-meaning-table': () => 'what each stage needs, and where every number comes from',
  'page-meaning-alevin': () => 'a hatched fish that still carries its yolk sac, in the gravel or in the box',
  'page-meaning-stage': () => 'eye-up, hatch, button-up, emergence (fry leaving the gravel)',
  'page-meaning-units': () => 'degree-days above the table’s base',
  'page-meaning-progress': () => 'fraction of the way to a stage',
  'page-meaning-days': () => 'one value a day: measured, filled or projected',
  'page-meaning-window': () => 'the days first, median and last eggs reach a stage, each with its interval',
  'page-meaning-spell': () => 'an unbroken run of harmful temperature at a box',
  'page-meaning-lifting': () => 'when the boxes may come out',
  'page-meaning-tally': () => 'what was counted in a lifted box',
  'page-meaning-ice': () => 'high water of spring; ice that grows on the bed',
  'page-sign-in-title': () => 'Sign in',
  'page-sign-in-name': () => 'Name',
  'page-sign-in-password': () => 'Password',
  'page-sign-in-do': () => 'Sign in',
  'page-invitation-title': () => 'An invitation',
  'page-invitation-answer': ({ by, role }) =>
    `${whoFirst('en', by)} invites you as ${asRole[role]}. Choose a name and a password.`,
  'page-invitation-do': () => 'Make my account',
  'page-account-title': () => 'Your account',
  'page-account-answer': ({ name, role }) => `You are signed in as ${name}, ${role}.`,
  'page-account-password': () => 'Change the password',
  'page-account-old': () => 'Password until now',
  'page-account-new': () => 'New password',
  'page-account-sessions': () => 'Where you are signed in',
  'page-account-end': () => 'Sign out there',
  'page-account-this': () => 'this one',
  'page-account-unknown': () => 'a browser that does not say which',
  'page-account-on-iphone': ({ browser }) => `${browser} on an iPhone`,
  'page-account-on-ipad': ({ browser }) => `${browser} on an iPad`,
  'page-account-on-android': ({ browser }) => `${browser} on Android`,
  'page-account-on-windows': ({ browser }) => `${browser} on Windows`,
  'page-account-on-mac': ({ browser }) => `${browser} on a Mac`,
  'page-account-on-chromeos': ({ browser }) => `${browser} on ChromeOS`,
  'page-account-on-linux': ({ browser }) => `${browser} on Linux`,
};
