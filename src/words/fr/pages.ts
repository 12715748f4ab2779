import type { FrameWords, SeasonPageWords } from '../../pages/page-words.js';
import { longDay, shortDay, whole } from '../format.js';
import { stageInFrench } from '../stages.js';

/** The first of a month is "1er" in French. */
const ordinal = (text: string) => text.replace(/^1 /, '1er ');
const day = (at: number) => ordinal(longDay('fr', at));
const short = (at: number) => ordinal(shortDay('fr', at));
const n = (count: number) => whole('fr', count);
/** The first day of a span, its year only where the last day's is another. */
const withoutYear = (from: number, to: number) =>
  day(from).slice(-4) === day(to).slice(-4) ? day(from).slice(0, -5) : day(from);
const boxes = (count: number) => (count === 1 ? 'un incubateur' : `${n(count)} incubateurs`);

const capital = (text: string) => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;

/** The frame around every page, and the season at a glance, in French (fr-CA). */
export const pages: {
  [Code in keyof (FrameWords & SeasonPageWords)]: (words: (FrameWords & SeasonPageWords)[Code]) => string;
} = {
  'page-skip': () => 'Aller au contenu',
  'page-menu': () => 'Pages',
  'page-nav-season': () => 'Saison',
  'page-nav-downloads': () => 'Relevés',
  'page-nav-stations': () => 'Stations',
  'page-nav-tables': () => 'Tables',
  'page-nav-editing': () => 'Modifier',
  'page-nav-help': () => 'Aide',
  'page-cautions': () => 'Avant d’agir d’après une date',
  'page-worked-out': () => 'D’où vient ce chiffre ?',
  'page-same-json': () => 'La même chose en JSON',
  'page-same-csv': () => 'La même chose en CSV',
  'page-back-season': () => 'Retour à la saison',
  'page-refused': () => 'Cela n’a pas pu se faire',
  'page-table-behind': () => 'Les chiffres derrière ce graphique',
  'page-open': () =>
    'Personne n’a encore de compte ici : le service est ouvert et ne répond que sur cette machine.',
  'page-signed-in': ({ name }) => `Session ouverte : ${name}.`,
  'page-sign-out': () => 'Fermer la session',

  'page-season-no-eggs': () => 'Aucun incubateur de cette saison ne contient encore d’œufs.',
  'page-season-closed': ({ season }) =>
    `La saison ${season} est close : ce que ses œufs sont devenus est dans son rapport.`,
  'page-season-empty': () => 'Cette saison n’a encore aucun incubateur.',
  'page-season-unknown': ({ boxes: count }) =>
    `On ne peut encore rien dire des œufs dans ${boxes(count)} : l’eau n’est pas connue.`,
  'page-season-all-over': ({ boxes: count, stage }) =>
    count === 1
      ? `Les œufs de l’incubateur ${stageInFrench(stage).probably}.`
      : `Les œufs des ${boxes(count)} ${stageInFrench(stage).probably}.`,
  'page-season-passed': ({ passed: count, boxes: all, stage }) =>
    count === all
      ? `Les œufs ${all === 1 ? 'de l’incubateur' : `des ${boxes(all)}`} ${stageInFrench(stage).probably}.`
      : `Dans ${n(count)} incubateur${count > 1 ? 's' : ''} sur ${n(all)}, les œufs ${stageInFrench(stage).probably}.`,
  'page-season-none-passed': ({ boxes: count, stage }) =>
    `Les œufs ${count === 1 ? 'de l’incubateur' : `des ${boxes(count)}`} ${stageInFrench(stage).notYet}.`,
  'page-season-next': ({ stage, from, to }) =>
    from === to
      ? `${stageInFrench(stage).expected} vers le ${day(from)}.`
      : `${stageInFrench(stage).expected} entre le ${withoutYear(from, to)} et le ${day(to)}.`,
  'page-season-next-open': ({ stage, from }) =>
    `${stageInFrench(stage).expected} à partir du ${day(from)} ; on ne peut pas encore en donner la fin.`,
  'page-season-cannot-say': ({ boxes: count }) => `Dans ${boxes(count)}, on ne peut encore rien dire.`,
  'page-season-title': ({ day: at }) => `La saison au ${day(at)}`,
  'page-season-list': ({ boxes: count }) => `Fenêtres : ${boxes(count)} sur un même axe de temps`,
  'page-season-key': () => 'Comment lire ces fenêtres',
  'page-season-key-solid': () =>
    'La barre pleine va des premiers œufs de l’incubateur (5 %) aux derniers (95 %).',
  'page-season-key-band': () =>
    'La barre pâle y ajoute l’incertitude des deux : chaque bout tient 8 fois sur 10.',
  'page-season-key-tick': () => 'Le trait vertical et la date sont ceux de l’œuf médian.',
  'page-season-key-passed': () => 'Une barre creuse, avec une coche, est probablement passée.',
  'page-season-key-today': () => 'La ligne tiretée est le jour que montre la page.',
  'page-season-key-water': () => 'À droite : jusqu’à quel jour l’eau de chaque incubateur a été relevée.',
  'page-season-water-through': ({ day: at }) => `eau relevée au ${short(at)}`,
  'page-season-water-ago': ({ days }) => `, il y a ${days === 1 ? '1 jour' : `${n(days)} jours`}`,
  'page-now-stage': ({ stage, next, share }) =>
    [
      ...(stage === null ? [] : [stageInFrench(stage).past]),
      ...(next === null ? [] : [`${share} du chemin vers ${stageInFrench(next).the}`]),
    ].join(', '),
  'page-season-water-today': () => 'eau relevée jusqu’à aujourd’hui',
  'page-season-water-none': () => 'eau non relevée',
  'page-season-sharpen': () => 'Ce qui resserrerait ces fenêtres',
  'page-season-sharpen-none': () => 'Aucun relevé connu ne resserrerait les fenêtres.',
  'page-season-sort': () => 'Ordre',
  'page-season-sort-site': () => 'par site',
  'page-season-sort-next': () => 'par prochain stade',
  'page-season-filter': () => 'Incubateur ou site',
  'page-season-next-stage': () => 'Prochain stade',
  'page-season-stage-any': () => 'tous',
  'page-season-show': () => 'Montrer',
  'page-season-shown': ({ shown, boxes: all }) => `${n(shown)} sur ${boxes(all)}`,
  'page-season-strip': ({ box, windows }) => `Incubateur ${box}. ${windows}`,
  'page-season-strip-window': ({ stage, first, median, last }) =>
    `${capital(stage)} : premiers œufs ${first}, médiane ${median}, derniers ${last}.`,
  'page-interval': ({ date, from, to }) => `${date} (${from} au ${to})`,
  'page-no-date': () => 'pas de date',
};
