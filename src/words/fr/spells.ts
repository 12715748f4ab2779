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
import { stageInFrench } from '../stages.js';
import { de } from './elision.js';

type Phrases = { [Code in keyof SpellsWords]: (words: SpellsWords[Code]) => string };

const kinds: Record<SpellKind, string> = {
  'too-warm': 'eau trop chaude',
  freezing: 'gel',
  'sudden-change': 'changement brusque',
  'too-cold': 'eau trop froide pour les alevins près de l’émergence',
  exposure: 'hors de l’eau ou pris dans la glace',
  freshet: 'crue',
  'break-up': 'débâcle en plein hiver',
  'low-water': 'eaux très basses',
};
const states: Record<SpellState, string> = {
  open: 'ouvert',
  ended: 'terminé',
  past: 'passé',
  confirmed: 'confirmé',
  withdrawn: 'retiré',
};
const severities: Record<Severity, string> = {
  lethal: 'mortel',
  'lowers-survival': 'réduit la survie',
  watch: 'à surveiller',
  event: 'événement',
};
const signs: Record<ExposureSign, string> = {
  'in-air': 'a été dans l’air',
  'in-snow': 'a été dans la neige',
  'frozen-in': 'a été pris dans la glace, constant à 0 °C ou juste au-dessous',
  'just-below-zero':
    'a indiqué plus froid que ne devient l’eau courante, entre −0,2 et −0,7 °C : pris dans la glace?',
  'not-damped': 'a indiqué bien moins de 0 °C, en variant comme l’air et non comme l’eau',
};
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const possible: Record<Certainty, string> = { measured: '', estimated: '', possible: ' (possible)' };
const celsius = (value: number) => `${decimal('fr', value, 1)} °C`;
/** Les paliers du gel sont plus serrés qu’un dixième. */
const hundredths = (value: number) => `${decimal('fr', value, 2)} °C`;
const degrees = (value: number) =>
  `${Number.isInteger(value) ? whole('fr', value) : decimal('fr', value, 1)} °C`;
const span = (hours: number) =>
  hours >= 72
    ? `${decimal('fr', hours / 24, hours % 24 === 0 ? 0 : 1)} jours`
    : hours < 0.95
      ? 'moins d’une heure'
      : `${decimal('fr', hours, hours < 10 && !Number.isInteger(hours) ? 1 : 0)} h`;
const share = (from: number, to: number) =>
  from === to ? percent('fr', from) : `de ${percent('fr', from)} à ${percent('fr', to)}`;
const apart = (boxes: number) => (boxes === 1 ? 'cet incubateur' : 'ces incubateurs');
const noted = (note: string) => (note === '' ? '' : ` : ${note}`);
const marks: Record<string, string> = {
  memory: 'de mémoire',
  abstract: 'résumé lu',
  'common practice': 'pratique courante',
  ours: 'de ce projet',
  computed: 'calculé',
};

export const spells: Phrases = {
  'spell-title': ({ kind, certainty }) => `${capital(kinds[kind])}${possible[certainty]}`,
  'spell-state': ({ state }) => states[state],
  'spell-severity': ({ severity, kind }) =>
    severity === 'lethal' && kind === 'exposure' ? 'urgent' : severities[severity],
  'spell-certainty': ({ certainty, origin, station }) =>
    origin === 'none'
      ? `Personne ne l’a mesuré : on le tire de ce que l’enregistreur ${de(station)} a enregistré.`
      : certainty === 'measured'
        ? `Mesuré à ${station}.`
        : certainty === 'estimated'
          ? `Estimé : mesuré à ${station}, qui remplace la station propre de l’incubateur.`
          : origin === 'filled'
            ? `Non mesuré : l’eau ${de(station)} a été comblée ces jours-là à partir d’autres stations. C’est une raison de lire l’enregistreur, pas un constat.`
            : `Non mesuré : ces jours ${de(station)} sont projetés à partir d’hivers passés. C’est une raison de regarder de nouveau, pas un constat.`,
  'spell-by-days': () =>
    'Ses heures sont calculées à partir des moyennes journalières et, lorsque des lectures de cette saison la donnent, de l’amplitude habituelle d’une journée. Un changement brusque ne se voit pas dans une telle eau.',
  'spell-beyond': ({ kind, peak, hours, degreeHours, limit }) =>
    kind === 'too-warm'
      ? `${span(hours)} au-dessus de ${degrees(limit)}, ${celsius(peak)} au plus; ${decimal('fr', degreeHours, 0)} degrés-heures au-dessus.`
      : kind === 'too-cold'
        ? `${span(hours)} au-dessous de ${degrees(limit)}, ${celsius(peak)} au plus froid; ${decimal('fr', degreeHours, 0)} degrés-heures au-dessous.`
        : `${span(hours)} au-dessous de ${degrees(limit)}, ${hundredths(peak)} au plus froid, régulier et sans suivre l’air : de la glace là où se trouve l’enregistreur. ${decimal('fr', degreeHours, 1)} degrés-heures au-dessous de la limite.`,
  'spell-changed': ({ by }) =>
    `L’eau a ${by < 0 ? 'baissé' : 'monté'} de ${decimal('fr', Math.abs(by), 1)} °C en une heure.`,
  'spell-exposed': ({ sign, hours, box }) =>
    `L’enregistreur de l’incubateur ${box} ${signs[sign]}, pendant ${span(hours)} : l’incubateur lui-même a pu être hors de l’eau ou pris dans la glace.`,
  'spell-gauge': ({ kind, hours }) =>
    `${capital(kinds[kind])} à la station hydrométrique, pendant ${span(hours)}. C’est noté pour les incubateurs qui étaient alors dans la rivière.`,
  'spell-chance': ({ chance }) => `Probabilité que ce soit vrai : ${percent('fr', chance)}.`,
  'spell-limit': ({ value, unit, hours, kind }) => {
    const lasting = hours > 0 ? ` pendant ${span(hours)} ou plus` : '';
    switch (unit) {
      case 'celsius':
        return `Limite : ${kind === 'too-warm' ? 'au-dessus' : 'au-dessous'} de ${degrees(value)}${lasting}, dépassée de plus que la précision de l’enregistreur.`;
      case 'celsius-per-hour':
        return `Limite : un changement de plus de ${degrees(value)} en une heure, dépassé de plus que la précision de l’enregistreur.`;
      case 'metres':
        return `Limite : ${decimal('fr', Math.abs(value), 1)} m ${value < 0 ? 'au-dessous' : 'au-dessus'} du niveau du mois précédent${lasting}.`;
      case 'times-usual':
        return `Limite : ${value < 1 ? `moins de ${percent('fr', value)} du` : `${decimal('fr', value, 0)} fois le`} débit du mois précédent${lasting}.`;
      case 'hours':
        return `À ce stade, les œufs sont jugés à partir de ${span(value)} hors de l’eau.`;
    }
  },
  'spell-stages': ({ stages: all }) =>
    all.length === 1 && all[0] !== undefined
      ? `Stade d’alors : ${stageInFrench(all[0].stage).eggs}.`
      : `Le stade n’est pas certain : ${list(
          'fr',
          all.map(({ stage, chance }) => `${stageInFrench(stage).eggs} (${percent('fr', chance)})`),
        )}. Le plus grave des stades possibles a été jugé.`,
  'spell-stage-not-known': () => 'On ne sait rien de l’eau qui précède : le stade n’est donc pas connu.',
  'spell-eggs': ({ eggs, boxes }) => `${whole('fr', eggs)} œufs dans ${fewOf('fr', boxes)}.`,
  'spell-mortality': ({ from, to, conditions }) =>
    `Mortalité publiée : ${share(from, to)}, pour ${conditions}.`,
  'spell-constant': () =>
    'De telles limites ont été trouvées à température constante : les heures au-delà disent la gravité, pas combien d’œufs sont morts.',
  'spell-no-mortality-gauge': () =>
    'Personne n’a publié la part des œufs que cela tue : aucun chiffre n’est donné.',
  'spell-not-excluded': () =>
    'Un enregistreur qui indique 0,0 °C ne peut pas exclure un incubateur gelé : l’eau courante et la glace fondante se lisent de la même façon.',
  'spell-do-exposure': ({ boxes }) =>
    `Quand on peut y aller sans danger, regardez si ${boxes.length === 1 ? `l’incubateur ${boxes[0]} est` : `les incubateurs ${fewOf('fr', boxes)} sont`} dans l’eau courante, et dites à la page des épisodes ce que vous avez trouvé. Ne traversez pas la glace et n’ouvrez aucun incubateur pour cela.`,
  'spell-do-warm': ({ boxes }) =>
    `Ce qui est arrivé ne peut pas être défait. Prévenez la personne biologiste responsable avant de toucher aux œufs, et comptez ${apart(boxes)} à part à la levée.`,
  'spell-do-freezing': ({ boxes }) =>
    `Prévenez la personne biologiste responsable, et comptez ${apart(boxes)} à part à la levée. Ne marchez pas sur la glace et n’ouvrez aucun incubateur pour voir.`,
  'spell-do-possible': () =>
    'Le prochain relevé de l’enregistreur de l’incubateur le confirme ou le retire; rien d’autre n’est à faire maintenant.',
  'spell-source': ({ cite, mark }) => (mark === null ? `${cite}.` : `${cite} [${marks[mark] ?? mark}].`),

  'cli-spells': () =>
    'épisodes qui nuisent aux œufs : les ouverts d’abord, puis ceux qui furent, pour toujours',
  'cli-spells-box': () => 'seulement ceux qui touchent un incubateur',
  'cli-spells-since': () => 'seulement ceux qui duraient encore à cette date (2026-01-31)',
  'cli-spells-none': () => 'Aucun épisode : on ne sait d’aucune limite dépassée.',
  'page-nav-spells': () => 'Épisodes',
  'page-spells-title': () => 'Épisodes qui nuisent aux œufs',
  'page-spells-answer': ({ open, lethal, kept }) =>
    open === 0
      ? `Aucun épisode n’est ouvert. ${kept === 0 ? 'On n’en a vu aucun.' : kept === 1 ? 'Un seul est conservé.' : `${whole('fr', kept)} sont conservés.`}`
      : `${open === 1 ? 'Un épisode est ouvert' : `${whole('fr', open)} épisodes sont ouverts`}${lethal === 0 ? '.' : lethal === 1 ? ', dont un mortel ou urgent.' : `, dont ${whole('fr', lethal)} mortels ou urgents.`}`,
  'page-spells-open': () => 'Ouverts',
  'page-spells-history': () => 'Passés',
  'page-spells-none-open': () => 'Rien n’est ouvert.',
  'page-spells-none': () => 'Aucun épisode n’a encore été vu.',
  'page-spells-plateau': () =>
    'De l’eau à 0,0 ± 0,2 °C pendant cinq mois est un hiver normal et ne produit rien ici. Mais un enregistreur qui indique 0,0 °C ne peut pas exclure un incubateur gelé.',
  'page-spells-unmeasured': () =>
    'Pour les jours que personne n’a mesurés, seules une eau trop chaude et une eau trop froide pour les alevins près de l’émergence sont signalées, au plus comme possibles. La glace ne l’est pas : l’eau établie à partir d’autres stations n’est jamais plus froide que 0 °C. Un changement brusque non plus : on ne connaît que la moyenne d’un tel jour.',
  'page-spells-timeline': () => 'Tous les incubateurs au fil de la saison',
  'page-spells-timeline-touched': () => 'Les incubateurs touchés par un épisode, au fil de la saison',
  'page-spells-timeline-others': ({ boxes }) =>
    boxes === 1
      ? 'Un autre incubateur n’en a pas eu.'
      : `${whole('fr', boxes)} autres incubateurs n’en ont pas eu.`,
  'page-spells-timeline-key': () =>
    'Un coin plein et son ombre : mesuré ou estimé, pendant ces jours; un coin creux : seulement possible. Ligne tiretée : le jour que montre la page.',
  'page-spells-box': () => 'Incubateur',
  'page-spells-what': () => 'Quoi',
  'page-spells-from': () => 'Du',
  'page-spells-to': () => 'Au',
  'page-spells-state': () => 'État',
  'page-spells-class': () => 'Classe',
  'page-spells-sources': () => 'D’où vient la limite',
  'page-spells-note': () => 'Note',
  'page-spells-acknowledge': () => 'J’en ai pris connaissance',
  'page-spells-acknowledged': ({ by, at, note }) => `Vu par ${byWhom('fr', by)}, ${at}${noted(note)}`,
  'page-spells-settle': () => 'Qu’était-ce?',
  'page-spells-settle-keep': () => 'Garder ce que j’ai trouvé',
  'page-spells-happened': () => 'L’incubateur était hors de l’eau ou pris dans la glace',
  'page-spells-did-not': () => 'L’incubateur était dans l’eau courante',
  'page-spells-settled': ({ how, by, at, note }) =>
    `${how === 'happened' ? 'C’était bien cela' : 'Ce n’était pas cela'}, selon ${byWhom('fr', by)}, ${at}${noted(note)}`,
  'page-spells-of-box': () => 'Épisodes',
  'page-spells-all': () => 'Tous les épisodes, avec l’origine des limites',
  'page-spells-mark': ({ title, from, to }) => `${title}, du ${from} au ${to}`,
  'page-spells-season': ({ open, lethal }) =>
    lethal > 0
      ? lethal === 1
        ? 'Un épisode ouvert est mortel ou urgent.'
        : `${whole('fr', lethal)} épisodes ouverts sont mortels ou urgents.`
      : open === 1
        ? 'Un épisode est ouvert.'
        : `${whole('fr', open)} épisodes sont ouverts.`,
  'page-spells-key': () =>
    'Un coin au-dessus des barres marque un épisode qui nuit ou peut nuire aux œufs; la liste sous la saison dit lequel. S’il pointe vers la gauche, l’épisode précède les jours dessinés.',
  'page-help-spell': () => 'Épisodes',
  'page-help-spell-text': () =>
    'Chaque lecture de la station propre d’un incubateur est comparée aux limites de la table de développement du lot, au stade où les œufs pouvaient être : les stades dont la probabilité est d’au moins un sur dix jugent, et le plus grave compte. Une suite dure tant que l’eau dépasse une limite de plus que la précision de l’enregistreur, avec des pauses d’une heure au plus; c’est un épisode quand elle a duré les heures de la limite, et des suites à moins d’un jour l’une de l’autre n’en font qu’un. Les lectures que les contrôles de qualité trouvent dans l’air, la neige ou la glace sont laissées de côté; si un tel enregistreur était avec un incubateur, celui-ci est une exposition possible jusqu’à ce qu’une personne dise ce que c’était. Le gel est signalé à −0,7 °C ou moins pendant une heure, régulier et sans suivre l’air. Dans l’eau comblée ou projetée, un épisode est au plus possible : la part des hivers possibles qui l’ont, signalée à partir de 3 sur 10. Seules une eau trop chaude et, près de l’émergence, trop froide sont signalées ainsi : l’eau comblée n’est jamais plus froide que 0 °C, la glace ne s’y voit donc pas, et un changement en une heure est caché dans la moyenne d’un jour. Les limites ont été trouvées à température constante : les heures et les degrés-heures au-delà disent la gravité; une mortalité n’est donnée que si elle a été publiée, avec ses conditions.',
  'unknown-spell': ({ spell }) => `Il n’y a pas d’épisode « ${spell} » : « underice spells » les énumère.`,
  'spell-not-an-exposure': ({ spell }) =>
    `« ${spell} » a été mesuré ou estimé : une personne ne tranche que les expositions possibles. Prenez-en plutôt connaissance.`,
  'spell-note-too-long': ({ most }) =>
    `La note d’un épisode compte au plus ${whole('fr', most)} caractères : raccourcissez-la.`,
};
