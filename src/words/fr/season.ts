import type { EntryRefused, SeasonProblem, SeasonProblemWords, SeasonWords } from '../../season/index.js';
import { askedAt, askedFor } from '../asked.js';
import type { ForecastingWords } from '../en/forecasting.js';
import { decimal, whole } from '../format.js';
import { fieldWithKey } from '../season-field.js';
import { counts } from './counts.js';
import { field } from './field.js';
import { forecasting } from './forecasting.js';
import { layoutSentence } from './formats.js';
import { seasonFields } from './season-fields.js';
import { onPage, placeInWords } from './season-page.js';
import { things } from './season-things.js';

/** Une valeur du fichier de saison, ou son absence. */
const stated = (value: string | null) =>
  value === null ? '(non précisé)' : value === 'true' ? 'oui' : value === 'false' ? 'non' : value;

/** How many problems a refusal spells out. */
const SPELLED_OUT = 20;

const clock = (moment: string) => moment.slice(0, 16).replace('T', ' ');

const figure = (value: number) => decimal('fr', value, 4).replace(/,?0+$/, '');

const yaml: Record<string, string> = {
  BLOCK_AS_IMPLICIT_KEY:
    'Il y a un deuxième deux-points sur cette ligne : mettez entre guillemets droits le texte qui suit le premier.',
  MISSING_CHAR:
    'Quelque chose a été ouvert ici sans être fermé : il manque un guillemet, un crochet ou un deux-points.',
  BAD_INDENT:
    'Cette ligne n’est pas en retrait comme ses voisines : les lignes d’une même chose commencent dans la même colonne.',
  BLOCK_IN_FLOW: 'Un bloc en retrait se trouve entre crochets : écrivez-le sur une ligne, ou sans crochets.',
  UNEXPECTED_TOKEN:
    'Ce qui se trouve ici n’y a pas sa place : un texte qui contient : # [ ] { } se met entre guillemets droits.',
  BAD_SCALAR_START:
    'Une valeur ne peut pas commencer par ce signe : mettez le texte entre guillemets droits.',
};

/** Where a problem stands: "ligne 12, lots 2 › eggs". */
function place({ line, column, path }: SeasonProblem): string {
  const spot = line === null ? '' : `ligne ${line}${path.length === 0 ? `, colonne ${column ?? 1}` : ''}`;
  const way = path.map((step) => (typeof step === 'number' ? String(step + 1) : step)).join(' › ');
  return [spot, way.replace(/ › (\d+)/g, ' $1')].filter((part) => part !== '').join(', ');
}

function tableSentence<Code extends keyof ForecastingWords>(problem: {
  code: Code;
  with: ForecastingWords[Code];
}): string {
  return forecasting[problem.code](problem.with);
}

function sentence<Code extends keyof SeasonWords>(problem: { code: Code; with: SeasonWords[Code] }): string {
  return season[problem.code](problem.with);
}

/** What is wrong, to a person who sees labels and no keys. */
function pageSentence<Code extends keyof SeasonProblemWords>(problem: {
  code: Code;
  with: SeasonProblemWords[Code];
}): string {
  return (onPage[problem.code] ?? season[problem.code])(problem.with);
}

/** What is wrong with an entry from the field: under the words of the phone's own question, and no place in a file. */
function ofField(problem: SeasonProblem): string {
  if (problem.code === 'season.missing')
    return field['field-missing']({ field: askedAt(problem) ?? placeInWords(problem) });
  const asked = askedFor(problem);
  const label = asked === null ? '' : `${field[`face-${asked}`]({})} : `;
  return `${label}${pageSentence(problem)}`;
}

/** Ce qui n’a pas été retenu; un formulaire ne nomme pas de fichier, mais la saison. */
function notTaken(file: string, entry?: EntryRefused): string {
  if (entry !== undefined && entry.kind !== 'field') return season['season.not-taken'](entry);
  return file === 'season'
    ? 'La saison n’a pas été changée'
    : `Le fichier ${file} n’a pas été adopté et rien n’a été changé`;
}

/** Un décompte saisi : sa place dans la saison ne dit rien à la personne, le nom du champ oui. */
function entryRefused(file: string, entry: EntryRefused, problems: readonly SeasonProblem[]): string {
  if (entry.kind === 'field') return ofFieldAll(problems);
  const lines = problems.map((problem) => {
    const key = problem.path.slice(2).join(' › ');
    return `  ${key === '' ? '' : `${key} : `}${sentence(problem)}`;
  });
  return [`${notTaken(file, entry)} :`, ...lines].join('\n');
}

const ofFieldAll = (problems: readonly SeasonProblem[]) => [...new Set(problems.map(ofField))].join(' ');

export const season: { [Code in keyof SeasonWords]: (figures: SeasonWords[Code]) => string } = {
  ...counts,
  'season.refused': ({ file, problems, entry }) => {
    if (entry !== undefined) return entryRefused(file, entry, problems);
    const lines = problems.slice(0, SPELLED_OUT).map((problem) => {
      const where = place(problem);
      return `  ${where === '' ? '' : `${where} : `}${sentence(problem)}`;
    });
    const rest = problems.length - lines.length;
    const more = rest > 0 ? [`  ${season['season.and-more']({ more: rest })}`] : [];
    return [`${notTaken(file)} :`, ...lines, ...more].join('\n');
  },

  'season.refused-on-page': ({ problems, entry, file }) => {
    if (entry?.kind === 'field') return ofFieldAll(problems);
    const lines = problems.slice(0, SPELLED_OUT).map((problem) => {
      const where = placeInWords(problem);
      return `${where === '' ? '' : `${where} : `}${pageSentence(problem)}`;
    });
    const rest = problems.length - lines.length;
    const more = rest > 0 ? [season['season.and-more']({ more: rest })] : [];
    return [`${notTaken(file, entry)} :`, ...lines, ...more].join('\n');
  },
  'season.place': ({ problem }) => placeInWords(problem),
  'season.on-page': ({ problem }) => pageSentence(problem),
  'season.not-taken': ({ kind, box }) =>
    kind === 'tally'
      ? `Le décompte de l’incubateur ${box} n’a pas été retenu et rien n’a été changé`
      : `La vérification de l’incubateur ${box} n’a pas été retenue et rien n’a été changé`,
  'season.and-more': ({ more }) => `… et ${whole('fr', more)} de plus.`,
  'season.line': ({ line, column }) => `ligne ${line}${column === null ? '' : `, colonne ${column}`}`,

  'season.not-yaml': ({ reason }) =>
    yaml[reason] ?? 'Ceci ne se lit pas comme du YAML : comparez avec les lignes de la saison d’exemple.',
  'season.not-text': () =>
    'Ce n’est pas un fichier texte : un fichier de saison est du texte brut, enregistré en UTF-8.',
  'season.not-utf8': () =>
    'Une lettre accentuée ne peut pas être lue ici : enregistrez de nouveau le fichier en UTF-8 (« Enregistrer sous » de l’éditeur).',
  'season.not-a-season': () =>
    'Ce n’est pas un fichier de saison : celui-ci commence par « group: » avec le nom (name) et le fuseau (zone) de l’organisation, puis énumère les stations, les sites, les lots et les incubateurs.',
  'season.too-large': ({ bytes, most }) =>
    `Il compte ${whole('fr', bytes)} caractères; un fichier de saison en a au plus ${whole('fr', most)}. Les lectures n’y ont pas leur place : chargez-les avec « underice load ».`,
  'season.too-deep': ({ most }) =>
    `Des listes s’emboîtent sur plus de ${most} niveaux : une saison n’en demande jamais autant. Cherchez un crochet de trop.`,
  'season.tab-indent': () => 'Une tabulation met cette ligne en retrait : employez des espaces.',
  'season.several-documents': () =>
    'Une ligne de --- commence un deuxième document : gardez une saison par fichier.',
  'season.repeated-key': ({ key }) => `« ${key} » figure deux fois au même endroit : n’en gardez qu’un.`,
  'season.alias-used': ({ name }) =>
    `« ${name} » tient lieu d’une chose écrite ailleurs : écrivez-la au long là où elle sert. Un texte qui commence par & ou * se met entre guillemets droits.`,
  'season.tag-used': ({ tag }) =>
    `« ${tag} » donne un type à la valeur, ce qu’un fichier de saison n’emploie pas : retirez-le.`,
  'season.key-not-text': () => 'Une clé est ici une liste : une clé est un mot, suivi d’un deux-points.',
  'season.unknown-key': ({ key, known }) => `« ${key} » n’est pas connu ici. Sont connus : ${known}.`,
  'season.missing': ({ key }) => `Il manque « ${key} ».`,
  'season.not-a-map': () => 'Il faut ici des lignes « clé: valeur ».',
  'season.not-a-list': () => 'Il faut ici une liste : chaque élément sur sa ligne, précédé de « - ».',
  'season.not-text-value': () => 'Il faut ici une seule valeur, et non une liste.',
  'season.unprintable': () => 'Le texte contient des caractères de commande : tapez-le de nouveau.',
  'season.text-too-long': ({ most }) => `Le texte dépasse ${whole('fr', most)} caractères : abrégez-le.`,
  'season.bad-id': ({ given }) =>
    `« ${given} » ne peut pas servir d’identifiant : employez des lettres et des chiffres, avec à l’intérieur - _ . ou une espace (64 caractères au plus), par exemple fosse-amont. Ce que les gens lisent peut se mettre dans « name ».`,
  'season.not-a-number': ({ given }) => `« ${given} » n’est pas un nombre.`,
  'season.not-whole': ({ given }) => `« ${given} » n’est pas un nombre entier.`,
  'season.grouped-number': ({ given, meant }) =>
    `« ${given} » se lit de deux façons : écrivez ${meant} si c’est bien cela.`,
  'season.decimal-comma': ({ given, meant }) =>
    `« ${given} » a une virgule décimale; le fichier de saison veut un point : écrivez ${meant}.`,
  'season.out-of-range': ({ given, least, most }) =>
    `« ${given} » sort de ce qui est possible : de ${figure(least)} à ${figure(most)}.`,
  'season.not-one-of': ({ given, choices }) => `« ${given} » ne figure pas parmi les choix : ${choices}.`,
  'season.not-yes-no': ({ given }) =>
    `« ${given} » n’est ni oui ni non : écrivez true ou false (oui ou non).`,
  'season.not-a-date': ({ given }) => `« ${given} » n’est pas une date : écrivez 2025-11-04.`,
  'season.not-a-moment': ({ given }) =>
    `« ${given} » n’est pas une date suivie d’une heure : écrivez 2025-11-04 14:30 ou, avec le décalage, 2025-11-04T14:30-04:00.`,
  'season.no-such-day': ({ given }) => `« ${given} » n’est pas un jour du calendrier de 1900 à 2099.`,
  'season.skipped-hour': ({ given, zone }) =>
    `${given} n’a paru sur aucune horloge dans ${zone} : cette heure a été sautée au passage à l’heure d’été. Écrivez l’heure voulue ou ajoutez le décalage.`,
  'season.repeated-hour': ({ given, first, second }) =>
    `${given} est passé deux fois au retour à l’heure normale : écrivez ${first} pour la première ou ${second} pour la seconde.`,
  'season.unknown-zone': ({ given }) =>
    `« ${given} » n’est pas un fuseau horaire : écrivez un nom comme America/Halifax, UTC, ou un décalage comme UTC-03:30.`,
  'season.twelve-months': ({ given }) =>
    `La courbe demande douze valeurs, de janvier à décembre; le fichier en donne ${whole('fr', given)}.`,
  'season.before-what': () =>
    'Les œufs n’ont pas pu être à deux endroits : gardez un seul de station, celsius et with.',
  'season.duplicate-id': ({ thing, id }) =>
    `Il y a déjà ${things[thing].called} « ${id} » (les majuscules ne comptent pas) : donnez à chacun son identifiant.`,
  'season.no-such': ({ thing, id, known }) =>
    known === ''
      ? `Il n’y a ${things[thing].no} « ${id} » : le fichier n’en énumère pas encore.`
      : `Il n’y a ${things[thing].no} « ${id} ». Il y a : ${known}.`,
  'season.ends-before-start': ({ from, to }) =>
    `La fin (${clock(to)}) ne vient pas après le début (${clock(from)}).`,
  'season.overlapping-deployment': ({ logger, from, other }) =>
    `L’enregistreur « ${logger} » a été mis à l’eau le ${clock(from)} alors qu’il était encore là où il se trouvait depuis le ${clock(other)} : un enregistreur n’est qu’à un endroit. Dites quand il en est sorti (« to »).`,
  'season.read-outside': ({ logger, at, from, to }) =>
    `L’enregistreur « ${logger} » a été relevé le ${clock(at)}, alors qu’il se trouvait là à partir du ${clock(from)}${to === null ? '' : ` jusqu’au ${clock(to)}`} : l’une des dates est fausse.`,
  'season.planted-before-fertilised': ({ lot, planted, fertilised }) =>
    `Les œufs du lot « ${lot} » ont été mis en incubateur le ${clock(planted)}, avant leur fécondation le ${clock(fertilised)} : l’une des deux dates est fausse.`,
  'season.lifted-before-planted': ({ box, lifted, planted }) =>
    `L’incubateur « ${box} » a été levé le ${clock(lifted)}, avant d’être garni le ${clock(planted)} : l’une des deux dates est fausse.`,
  'season.too-many-eggs': ({ lot, eggs, inBoxes }) =>
    `Les incubateurs contiennent ${whole('fr', inBoxes)} œufs du lot « ${lot} », qui en comptait ${whole('fr', eggs)} : corrigez le compte du lot ou les remplissages.`,
  'season.more-out-than-in': ({ lot, eggs, inBoxes, elsewhere }) =>
    `Le lot « ${lot} » comptait ${whole('fr', eggs)} œufs, mais ${whole('fr', inBoxes)} sont en incubateur et ${whole('fr', elsewhere)} sont déclarés témoins, perdus ou en surplus : c’est ${whole('fr', inBoxes + elsewhere - eggs)} de trop.`,
  'season.more-than-compartments': ({ box, eggs, compartments, doubled }) =>
    `L’incubateur « ${box} » a de la place pour ${whole('fr', compartments)} œufs${doubled > 0 ? ` et ${whole('fr', doubled)} en double` : ''}, mais ses remplissages en comptent ${whole('fr', eggs)} : corrigez les œufs, les compartiments vides ou les doublés.`,
  'season.more-fertilised-than-looked-at': ({ fertilised, of }) =>
    `${whole('fr', fertilised)} œufs fécondés sur ${whole('fr', of)} examinés : c’est plus que le total.`,
  'season.not-that-sex': ({ cross, adult, sex }) =>
    `Dans le croisement « ${cross} », « ${adult} » est inscrit comme ${sex === 'male' ? 'mâle' : 'femelle'} : nommez un autre géniteur ou corrigez son sexe.`,
  'season.not-a-photograph': ({ given }) =>
    `« ${given} » n’est pas le nom d’une photographie conservée : ajoutez-la par une page ou par « underice field photo ».`,
  'season.no-temperature': ({ station }) =>
    `La station « ${station} » n’enregistre pas la température et ne peut donc pas représenter l’eau d’un incubateur : nommez-en une autre, ou ajoutez temperature à ses grandeurs (quantities).`,
  'season.history-loop': ({ loop }) =>
    `Chacun de ces lots a été gardé avec le suivant, et le dernier avec le premier (${loop}) : dites pour l’un d’eux dans quelle eau il se trouvait (station ou celsius).`,
  'season.shipped-table-id': ({ id }) =>
    `« ${id} » est l’identifiant d’une table fournie avec le programme : donnez-en un autre à la vôtre.`,
  'season.no-such-stage': ({ stage, table, known }) =>
    `La table « ${table} » n’a pas de stade « ${stage} ». Elle a : ${known}.`,
  'season.lot-not-in-box': ({ lot, box }) =>
    `L’incubateur « ${box} » ne contient aucun œuf du lot « ${lot} ».`,
  'season.which-lot': ({ box, lots }) =>
    lots === ''
      ? `L’incubateur « ${box} » ne contient pas d’œufs : nommez le lot.`
      : `L’incubateur « ${box} » contient plusieurs lots (${lots}) : nommez celui qui a été vu.`,
  'season.seen-of-what': () => 'De quoi a-t-on vu le stade? Nommez l’incubateur, le lot ou les deux.',
  'season.more-seen-than-looked-at': ({ seen, of }) =>
    `${whole('fr', seen)} à ce stade sur ${whole('fr', of)} regardés : c’est plus que le total.`,
  'season.stage-needs-what': () =>
    'Un stade demande l’un de ces choix : une loi (law); une loi et « after » un autre stade; « multipleOf » un autre stade et un « factor »; ou « sameAs » un autre stade.',
  'season.bad-layout': ({ problem }) => layoutSentence(problem),
  'season.table-rule': ({ table, problem }) => `Table « ${table} » : ${tableSentence(problem)}`,

  'season.added': ({ thing, id }) => `${things[thing].fresh} : ${id}`,
  'season.removed': ({ thing, id }) => `${things[thing].gone} : ${id}`,
  'season.changed': ({ thing, id, field, before, after }) =>
    `${things[thing].name} ${id}, ${fieldWithKey(seasonFields, field)} : ${stated(before)} → ${stated(after)}`,
};
