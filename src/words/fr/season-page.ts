import type { SeasonProblem, SeasonProblemWords } from '../../season/index.js';
import { capitalised, pathNamed } from '../season-field.js';
import { seasonFields } from './season-fields.js';
import { things } from './season-things.js';

type Sentences = { [Code in keyof SeasonProblemWords]?: (figures: SeasonProblemWords[Code]) => string };

/** Ce qui se lit autrement sur une page, où l’on voit des libellés et non les clés du fichier de saison. */
export const onPage: Sentences = {
  'season.missing': () => 'Ceci est à remplir.',
  'season.no-such': ({ thing, id, known }) =>
    known === ''
      ? `Il n’y a encore ${things[thing].no} « ${id} ».`
      : `Il n’y a ${things[thing].no} « ${id} ». Il y a : ${known}.`,
  'season.bad-id': ({ given }) =>
    `« ${given} » ne peut pas servir de nom ici : employez des lettres et des chiffres, avec à l’intérieur - _ . ou une espace (64 caractères au plus), par exemple fosse-amont.`,
  'season.decimal-comma': ({ given, meant }) => `« ${given} » se lit de deux façons : écrivez ${meant}.`,
  'season.not-yes-no': ({ given }) => `« ${given} » n’est ni oui ni non.`,
  'season.twelve-months': ({ given }) =>
    `La courbe demande douze valeurs, de janvier à décembre; il y en a ${given}.`,
  'season.before-what': () =>
    'Les œufs n’ont pas pu être à deux endroits : gardez la station, la température ou l’autre lot.',
  'season.overlapping-deployment': ({ logger, from, other }) =>
    `L’enregistreur « ${logger} » a été mis à l’eau le ${clock(from)} alors qu’il était encore là où il se trouvait depuis le ${clock(other)} : un enregistreur n’est qu’à un endroit. Dites quand il en est sorti.`,
  'season.no-temperature': ({ station }) =>
    `La station « ${station} » n’enregistre pas la température et ne peut donc pas représenter l’eau d’un incubateur : nommez-en une autre, ou ajoutez la température à ses grandeurs.`,
  'season.history-loop': ({ loop }) =>
    `Chacun de ces lots a été gardé avec le suivant, et le dernier avec le premier (${loop}) : dites pour l’un d’eux dans quelle eau il se trouvait.`,
};

const clock = (moment: string) => moment.slice(0, 16).replace('T', ' ');

/** La chose et le champ où se trouve le problème : « Incubateur B1, levée ». */
export function placeInWords({ of, path }: SeasonProblem): string {
  const field = pathNamed(seasonFields, of === null ? path : path.slice(2));
  const whose =
    of === null ? [] : [`${things[of.thing].name} ${of.id.replace(/T(\d\d:\d\d)[^,]*/g, ' $1')}`.trim()];
  return capitalised([...whose, ...(field === '' ? [] : [field])].join(', '));
}
