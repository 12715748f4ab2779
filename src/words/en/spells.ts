import type {
  Certainty,
  ExposureSign,
  Severity,
  SpellKind,
  SpellState,
} from '../../../forecasting/spells/spell.js';
import type { SpellsWords } from '../../spells/words.js';
import { decimal, fewOf, list, percent, whole } from '../format.js';
import { byWhom } from '../somebody.js';
import { stageInEnglish } from '../stages.js';

type Phrases = { [Code in keyof SpellsWords]: (words: SpellsWords[Code]) => string };

const kinds: Record<SpellKind, string> = {
  'too-warm': 'too warm',
  freezing: 'freezing',
  'sudden-change': 'sudden change',
  'too-cold': 'too cold for fry near emergence',
  exposure: 'out of the water or frozen in',
  freshet: 'freshet',
  'break-up': 'midwinter break-up',
  'low-water': 'very low water',
};
const states: Record<SpellState, string> = {
  open: 'open',
  ended: 'ended',
  past: 'past',
  confirmed: 'confirmed',
  withdrawn: 'withdrawn',
};
const severities: Record<Severity, string> = {
  lethal: 'lethal',
  'lowers-survival': 'lowers survival',
  watch: 'watch',
  event: 'event',
};
const signs: Record<ExposureSign, string> = {
  'in-air': 'lay in air',
  'in-snow': 'lay in snow',
  'frozen-in': 'was frozen in, flat at or just below 0 °C',
  'just-below-zero': 'read colder than flowing water gets, between −0.2 and −0.7 °C: frozen in?',
  'not-damped': 'read far below 0 °C, swinging as air does and water does not',
};
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const possibly: Record<Certainty, string> = { measured: '', estimated: '', possible: 'possibly ' };
const celsius = (value: number) => `${decimal('en', value, 1)} °C`;
/** Bands of freezing lie closer together than a tenth. */
const hundredths = (value: number) => `${decimal('en', value, 2)} °C`;
const degrees = (value: number) =>
  `${Number.isInteger(value) ? whole('en', value) : decimal('en', value, 1)} °C`;
const span = (hours: number) =>
  hours >= 72
    ? `${decimal('en', hours / 24, hours % 24 === 0 ? 0 : 1)} days`
    : hours < 0.95
      ? 'less than an hour'
      : `${decimal('en', hours, hours < 10 && !Number.isInteger(hours) ? 1 : 0)} h`;
const share = (from: number, to: number) =>
  from === to ? percent('en', from) : `${percent('en', from)} to ${percent('en', to)}`;
const apart = (boxes: number) => (boxes === 1 ? 'this box' : 'these boxes');
const noted = (note: string) => (note === '' ? '' : `: ${note}`);
const marks: Record<string, string> = {
  memory: 'from memory',
  abstract: 'abstract only',
  ours: 'our estimate',
};

export const spells: Phrases = {
  'spell-title': ({ kind, certainty }) => capital(`${possibly[certainty]}${kinds[kind]}`),
  'spell-state': ({ state }) => states[state],
  'spell-severity': ({ severity, kind }) =>
    severity === 'lethal' && kind === 'exposure' ? 'urgent' : severities[severity],
  'spell-certainty': ({ certainty, origin, station }) =>
    origin === 'none'
      ? `Nobody measured it: it is told from what the logger at ${station} recorded.`
      : certainty === 'measured'
        ? `Measured at ${station}.`
        : certainty === 'estimated'
          ? `Estimated: measured at ${station}, which stands in for the box’s own station.`
          : origin === 'filled'
            ? `Not measured: the water at ${station} on these days was filled from other stations. Take it as a reason to read the logger, not as a finding.`
            : `Not measured: these days at ${station} are projected from past winters. Take it as a reason to look again, not as a finding.`,
  'spell-by-days': () =>
    'Its hours are reckoned from daily means and, where readings of that season tell it, the usual swing of a day. A sudden change cannot be told from such water.',
  'spell-beyond': ({ kind, peak, hours, degreeHours, limit }) =>
    kind === 'too-warm'
      ? `${span(hours)} above ${degrees(limit)}, ${celsius(peak)} at most; ${decimal('en', degreeHours, 0)} degree-hours above it.`
      : kind === 'too-cold'
        ? `${span(hours)} below ${degrees(limit)}, ${celsius(peak)} at the coldest; ${decimal('en', degreeHours, 0)} degree-hours below it.`
        : `${span(hours)} below ${degrees(limit)}, ${hundredths(peak)} at the coldest, steady and not following the air: ice where the logger lies. ${decimal('en', degreeHours, 1)} degree-hours below the limit.`,
  'spell-changed': ({ by }) =>
    `The water ${by < 0 ? 'fell' : 'rose'} by ${decimal('en', Math.abs(by), 1)} °C within an hour.`,
  'spell-exposed': ({ sign, hours, box }) =>
    `The logger at box ${box} ${signs[sign]}, for ${span(hours)}: the box itself may have been out of the water or frozen in.`,
  'spell-gauge': ({ kind, hours }) =>
    `${capital(kinds[kind])} at the gauge, for ${span(hours)}. It is noted against the boxes that lay in the river then.`,
  'spell-chance': ({ chance }) => `Chance that it is so: ${percent('en', chance)}.`,
  'spell-limit': ({ value, unit, hours, kind }) => {
    const lasting = hours > 0 ? ` for ${span(hours)} or more` : '';
    switch (unit) {
      case 'celsius':
        return `Limit: ${kind === 'too-warm' ? 'above' : 'below'} ${degrees(value)}${lasting}, passed by more than the logger’s accuracy.`;
      case 'celsius-per-hour':
        return `Limit: a change of more than ${degrees(value)} within an hour, passed by more than the logger’s accuracy.`;
      case 'metres':
        return `Limit: ${decimal('en', Math.abs(value), 1)} m ${value < 0 ? 'under' : 'above'} the level of the month before${lasting}.`;
      case 'times-usual':
        return `Limit: ${value < 1 ? `less than ${percent('en', value)} of` : `${decimal('en', value, 0)} times`} the flow of the month before${lasting}.`;
      case 'hours':
        return `Eggs of this stage are judged from ${span(value)} out of the water.`;
    }
  },
  'spell-stages': ({ stages: all }) =>
    all.length === 1 && all[0] !== undefined
      ? `Stage then: ${stageInEnglish(all[0].stage).eggs}.`
      : `The stage is not certain: ${list(
          'en',
          all.map(({ stage, chance }) => `${stageInEnglish(stage).eggs} (${percent('en', chance)})`),
        )}. The gravest that is possible was judged.`,
  'spell-stage-not-known': () => 'Nothing is known of the water before it, so the stage is not known.',
  'spell-eggs': ({ eggs, boxes }) => `${whole('en', eggs)} eggs in ${fewOf('en', boxes)}.`,
  'spell-mortality': ({ from, to, conditions }) =>
    `Published mortality: ${share(from, to)}, for ${conditions}.`,
  'spell-constant': () =>
    'Limits like this were found at constant temperature: the hours beyond show how severe it was, not how many died.',
  'spell-no-mortality-gauge': () =>
    'Nobody has published what share of eggs this kills, so no figure is given.',
  'spell-not-excluded': () =>
    'A logger that reads 0.0 °C cannot exclude a frozen box: running water and melting ice read the same.',
  'spell-do-exposure': ({ boxes }) =>
    `When it is safe to go there, look whether ${boxes.length === 1 ? `box ${boxes[0]} lies` : `boxes ${fewOf('en', boxes)} lie`} in running water, and say on the page of spells what you found. Do not cross ice and do not open a box for it.`,
  'spell-do-warm': ({ boxes }) =>
    `What has happened cannot be undone. Tell the biologist before anything is done with the eggs, and count ${apart(boxes)} apart at lifting.`,
  'spell-do-freezing': ({ boxes }) =>
    `Tell the biologist, and count ${apart(boxes)} apart at lifting. Do not walk on the ice and do not open a box to look.`,
  'spell-do-possible': () =>
    'The next download from the box’s own logger confirms or withdraws it; no more need be done now.',
  'spell-source': ({ cite, mark }) => (mark === null ? `${cite}.` : `${cite} [${marks[mark] ?? mark}].`),

  'cli-spells': () => 'spells that harm eggs: open ones first, then what was, for ever',
  'cli-spells-box': () => 'only those that touch one box',
  'cli-spells-since': () => 'only those that lasted until then or later (2026-01-31)',
  'cli-spells-none': () => 'No spell: nothing is known to have passed a limit.',
  'page-nav-spells': () => 'Spells',
  'page-spells-title': () => 'Spells that harm eggs',
  'page-spells-answer': ({ open, lethal, kept }) =>
    open === 0
      ? `No spell is open. ${kept === 0 ? 'None has been seen.' : kept === 1 ? 'One is kept from before.' : `${whole('en', kept)} are kept from before.`}`
      : `${open === 1 ? 'One spell is open' : `${whole('en', open)} spells are open`}${lethal === 0 ? '.' : lethal === 1 ? ', one of them lethal or urgent.' : `, ${whole('en', lethal)} of them lethal or urgent.`}`,
  'page-spells-open': () => 'Open',
  'page-spells-history': () => 'Past',
  'page-spells-none-open': () => 'Nothing is open.',
  'page-spells-none': () => 'No spell has been seen yet.',
  'page-spells-plateau': () =>
    'Water at 0.0 ± 0.2 °C for five months is a normal winter and raises nothing here. But a logger that reads 0.0 °C cannot exclude a frozen box.',
  'page-spells-unmeasured': () =>
    'On days nobody measured, only water too warm, and water too cold for fry near emergence, are told, and at most as possible. Ice is not: water worked out from other stations is never colder than 0 °C. Nor is a sudden change: only the mean of such a day is known.',
  'page-spells-timeline': () => 'All boxes over the season',
  'page-spells-timeline-touched': () => 'The boxes that a spell touched, over the season',
  'page-spells-timeline-others': ({ boxes }) =>
    boxes === 1 ? 'One more box had none.' : `${whole('en', boxes)} more boxes had none.`,
  'page-spells-timeline-key': () =>
    'A full wedge and its shade: measured or estimated, over those days; a hollow one: only possible. Broken line: the day the page is for.',
  'page-spells-box': () => 'Box',
  'page-spells-what': () => 'What',
  'page-spells-from': () => 'From',
  'page-spells-to': () => 'To',
  'page-spells-state': () => 'State',
  'page-spells-class': () => 'Class',
  'page-spells-sources': () => 'Where the limit comes from',
  'page-spells-note': () => 'Note',
  'page-spells-acknowledge': () => 'I have seen it',
  'page-spells-acknowledged': ({ by, at, note }) => `Seen by ${byWhom('en', by)}, ${at}${noted(note)}`,
  'page-spells-settle': () => 'What was it?',
  'page-spells-settle-keep': () => 'Keep what I found',
  'page-spells-happened': () => 'The box was out of the water or frozen in',
  'page-spells-did-not': () => 'The box was in running water',
  'page-spells-settled': ({ how, by, at, note }) =>
    `${how === 'happened' ? 'It was so' : 'It was not so'}, says ${byWhom('en', by)}, ${at}${noted(note)}`,
  'page-spells-of-box': () => 'Spells',
  'page-spells-all': () => 'All spells, with where the limits come from',
  'page-spells-mark': ({ title, from, to }) => `${title}, ${from} to ${to}`,
  'page-spells-season': ({ open, lethal }) =>
    lethal > 0
      ? `${lethal === 1 ? 'One open spell is' : `${whole('en', lethal)} open spells are`} lethal or urgent.`
      : open === 1
        ? 'One spell is open.'
        : `${whole('en', open)} spells are open.`,
  'page-spells-key': () =>
    'A wedge above the bars marks a spell that harms or may harm eggs; the list under the season says which. One that points left lies before the days drawn.',
  'page-help-spell': () => 'Spells',
  'page-help-spell-text': () =>
    'Every reading of a box’s own station is held against the limits of the lot’s development table, at the stage the eggs may have been in then: stages with a chance of one in ten or more judge, and the gravest counts. A run goes on while the water lies beyond a limit by more than the logger’s accuracy, with pauses of an hour at most; it is a spell once it has lasted the limit’s hours, and runs less than a day apart are one spell. Readings that the quality checks find in air, snow or ice are left out; where such a logger lay with a box, the box is a possible exposure until a person says what it was. Freezing is told at −0.7 °C or below for an hour, steady and not following the air. In filled and projected water a spell is at most possible: the share of the possible winters that have it, raised from 3 in 10. Only too warm and, near emergence, too cold are told so: filled water is never colder than 0 °C, so ice cannot be seen in it, and a change within an hour is hidden in a day’s mean. Limits were found at constant temperature, so hours and degree-hours beyond say how severe it was; a mortality stands only where one was published, with its conditions.',
  'unknown-spell': ({ spell }) => `There is no spell "${spell}": "underice spells" lists them.`,
  'spell-not-an-exposure': ({ spell }) =>
    `"${spell}" was measured or estimated: only a possible exposure is settled by a person. Acknowledge it instead.`,
  'spell-note-too-long': ({ most }) =>
    `A note of a spell holds ${whole('en', most)} characters at most: shorten it.`,
};
