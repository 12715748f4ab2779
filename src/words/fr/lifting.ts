import type { LiftingCommandWords, LiftingPlanWords, OutcomeWords, TallyWords } from '../../lifting/words.js';
import { dayAndTime, decimal, list, longDay, percent, shortDay, whole } from '../format.js';
import { byWhom } from '../somebody.js';
import { de } from './elision.js';

type Phrases<Words> = { [Code in keyof Words]: (words: Words[Code]) => string };

const day = (at: number) => longDay('fr', at);
const boxes = (count: number) => (count === 1 ? 'un incubateur' : `${whole('fr', count)} incubateurs`);
const share = (of: number) => (of > 0 && of < 0.1 ? percent('fr', of, 1) : percent('fr', of));
const chance = (of: number) => (of > 0.99 ? 'plus de 99 %' : of < 0.01 ? 'moins de 1 %' : percent('fr', of));
const about = (count: number) =>
  count < 0.5
    ? 'aucun'
    : count < 10
      ? `environ ${whole('fr', count)}`
      : `environ ${whole('fr', Number(count.toPrecision(2)))}`;
const more = (count: number, of: string) =>
  Math.abs(count) < 0.5
    ? `pas plus ${of.startsWith('a') ? 'd’' : 'de '}${of}`
    : `${about(Math.abs(count))} ${of} de ${count < 0 ? 'moins' : 'plus'}`;
const unit = { level: 'm', discharge: 'm³/s' } as const;
const ALEVINS = 'alevins vésiculés';

const plan: Phrases<LiftingPlanWords> = {
  'lifting-share': ({ mean, from, to, digits }) => {
    const pc = (of: number) => percent('fr', of, digits);
    if (mean > to) return `${pc(mean)} (9 fois sur 10, au plus ${pc(to)})`;
    if (mean < from) return `${pc(mean)} (9 fois sur 10, au moins ${pc(from)})`;
    return `${pc(mean)} (${pc(from)} – ${pc(to)})`;
  },
  'lifting-one-day': ({ day: at, boxes: count, sites }) =>
    `Levez le ${day(at)} : ${boxes(count)} à ${sites === 1 ? 'un site' : `${whole('fr', sites)} sites`}.`,
  'lifting-days': ({ days }) =>
    `Levez les jours suivants : ${list(
      'fr',
      days.map((one) => `${shortDay('fr', one.day)} (${boxes(one.boxes)})`),
    )}.`,
  'lifting-sure': ({ chance: sure, boxes: count }) =>
    count === 1
      ? `La probabilité qu’il respecte alors les deux seuils est de ${chance(sure)}.`
      : `La probabilité que tous les incubateurs respectent alors les deux seuils est de ${chance(sure)}.`,
  'lifting-single-site-trade': ({ single, day: at }) =>
    `Le même jour pour tous, au mieux le ${day(at)}, cette probabilité serait de ${chance(single)}.`,
  'lifting-none-good': ({ chance: sure, stillInBox, emerged }) =>
    `Aucun jour ne promet de respecter les deux seuils (${share(stillInBox)} d’alevins vésiculés encore dans l’incubateur, ${share(emerged)} de jeunes du mauvais côté de l’émergence) : au mieux, la probabilité est de ${chance(sure)}.`,
  'lifting-least-bad': ({ days }) =>
    `Les moins mauvais : ${list(
      'fr',
      days.map((one) => `${shortDay('fr', one.day)} (${boxes(one.boxes)})`),
    )}.`,
  'lifting-far-off': ({ days }) =>
    `C’est dans ${whole('fr', days)} jours : le doute tient surtout au temps qu’il fera, et rien n’est à décider maintenant.`,
  'lifting-price': ({ alevins, fry, eggs, after }) =>
    `On attend alors : alevins vésiculés encore dans les incubateurs, ${about(alevins)}; jeunes ${after ? 'encore dans' : 'déjà sortis du'} gravier, ${about(fry)}; sur ${whole('fr', eggs)} œufs mis en incubateur.`,
  'lifting-earlier': ({ alevins, fry, chance: sure }) =>
    `Un jour plus tôt : ${more(alevins, ALEVINS)} retirés avec les incubateurs, ${more(fry, 'jeunes')} sortis du gravier; probabilité de ${chance(sure)}.`,
  'lifting-later': ({ alevins, fry, chance: sure }) =>
    `Un jour plus tard : ${more(fry, 'jeunes')} sortis du gravier, ${more(alevins, ALEVINS)} retirés avec les incubateurs; probabilité de ${chance(sure)}.`,
  'lifting-later-after': ({ fry, chance: sure }) =>
    `Un jour plus tard : ${more(fry, 'jeunes')} encore dans le gravier sous vos pieds; probabilité de ${chance(sure)}.`,
  'lifting-earlier-after': ({ fry, alevins, chance: sure }) =>
    `Un jour plus tôt : ${more(fry, 'jeunes')} encore dans le gravier, ${more(alevins, ALEVINS)} encore dans les incubateurs; probabilité de ${chance(sure)}.`,
  'lifting-costs': () =>
    'Les deux côtés ne coûtent pas la même chose. Trop tôt coûte des alevins vésiculés, retirés avec l’incubateur. Trop tard coûte surtout des indices, car l’incubateur en dit moins; mais les pieds dans un gravier occupé tuent aussi : ne marchez que là où il le faut.',
  'lifting-look-again': ({ day: at }) =>
    `Revoyez le plan d’ici le ${day(at)} : l’eau de ces semaines sera alors connue.`,
  'lifting-all-blocked': ({ boxes: count }) =>
    `Il n’y a aucun jour pour lever ${boxes(count)} : tous ceux qui conviendraient sont exclus. Libérez-en un, ou redemandez quand la liste aura changé.`,
  'lifting-some-blocked': ({ boxes: names }) =>
    `Il ne reste aucun jour pour ${list('fr', names)} : trop de jours sont exclus pour ce nombre d’incubateurs par jour.`,
  'lifting-would-free': ({ chance: sure }) =>
    `Si aucun jour n’était exclu et que l’équipe suffisait, la probabilité serait de ${chance(sure)}.`,
  'lifting-would-stagger': ({ chance: sure, single }) =>
    `Échelonner les sites, comme le font ces jours, fait passer la probabilité de ${chance(single)} à ${chance(sure)}.`,
  'lifting-would-levels': () =>
    'Des seuils plus larges permettraient plus de jours; c’est à la personne biologiste de les fixer.',
  'lifting-would-apart': ({ chance: sure }) =>
    `Avec un jour propre à chaque site, quelles que soient les sorties communes, la probabilité serait de ${chance(sure)}.`,
  'lifting-would-download': ({ stations, stage, narrower }) =>
    `Un relevé de plus (${list('fr', stations)}), dès que la glace, l’eau et les œufs le permettent, resserre la fenêtre suivante (${stage}) d’au plus ${decimal('fr', narrower, 1)} ${narrower < 2 ? 'jour' : 'jours'}.`,
  'lifting-nothing-left': () =>
    'Tous les incubateurs ont été levés ou sont perdus : il ne reste rien à planifier.',
  'lifting-no-boxes': () => 'La saison n’a pas encore d’incubateur : il n’y a rien à planifier.',
  'lifting-no-forecast': ({ boxes: names, why }) =>
    `On ne sait rien des dates ${de(list('fr', names))} : aucun jour n’est proposé. ${
      why.length === 0 ? 'La table ne nomme pas l’éclosion, ou on ne sait rien de l’eau.' : why.join(' ')
    }`,
  'lifting-stage-stands-in': ({ stage, boxes: names }) =>
    `La table ${de(list('fr', names))} ne nomme pas l’émergence : ${stage} en tient lieu.`,
  'lifting-no-gravel-stage': ({ boxes: names }) =>
    `La table ${de(list('fr', names))} ne nomme aucun stade après l’éclosion : seule la sortie de l’incubateur est planifiée, et l’on ne sait rien de la sortie du gravier.`,
  'lifting-outside-permit': ({ permits }) => `hors du permis (${permits})`,
  'lifting-gauge-high': ({ station, quantity, value, most }) =>
    `${quantity === 'level' ? 'le niveau' : 'le débit'} à ${station} est de ${decimal('fr', value, 2)} ${unit[quantity]}, au-dessus de ${decimal('fr', most, 2)}`,
  'lifting-gauge-rule': ({ station, quantity, most, value }) =>
    `N’entrez pas dans l’eau au-dessus de ${decimal('fr', most, 2)} ${unit[quantity]} à ${station}${value === null ? ' (aucune lecture récente connue)' : ` (dernière valeur connue : ${decimal('fr', value, 2)})`} : lisez-le le matin même, car personne ne peut le prévoir.`,
  'lifting-approved': ({ by, at, zone }) =>
    `Approuvé par ${byWhom('fr', by)} le ${dayAndTime('fr', at, zone)}.`,
  'lifting-draft': () => 'Ce plan est une ébauche : personne ne l’a approuvé.',
  'lifting-moved': ({ days, later, since }) =>
    `Depuis l’approbation, le plan ${later ? 'a reculé' : 'a avancé'} de ${days === 1 ? 'un jour' : `${whole('fr', days)} jours`}, d’après ce qui est arrivé à partir du ${day(since)}.`,
  'lifting-moved-boxes': ({ boxes: names }) =>
    `Incubateurs dont le jour n’est plus celui qui a été approuvé : ${list('fr', names)}.`,
  'lifting-not-moved': () => 'La prévision donne toujours les mêmes jours.',
  'lifting-came-in': ({ things }) => `Arrivé depuis : ${list('fr', things)}.`,
  'lifting-nothing-to-approve': () => 'Aucun jour n’est recommandé : il n’y a donc rien à approuver.',
  'lifting-plan-changed': () =>
    'Le plan a changé depuis que vous l’avez consulté : relisez-le, puis approuvez-le.',
};

const tally: Phrases<TallyWords> = {
  'tally-agrees': ({ counted }) => `${whole('fr', counted)} comptés : autant qu’il en a été mis.`,
  'tally-short': ({ counted, planted }) =>
    `${whole('fr', counted)} comptés sur ${whole('fr', planted)} : il en manque ${whole('fr', planted - counted)}.`,
  'tally-over': ({ counted, planted }) =>
    `${whole('fr', counted)} comptés sur ${whole('fr', planted)} : ${whole('fr', counted - planted)} de trop, et le compte est maintenu.`,
  'tally-partial': () => 'Les trois nombres n’ont pas tous été notés : la somme ne dit rien.',
  'tally-two-counts': ({ counters, difference }) =>
    `Compté par ${list('fr', counters)} : l’écart est de ${whole('fr', difference)}, c’est l’erreur de comptage.`,
  'tally-gone': ({ found }) => `L’incubateur : ${found}.`,
  'tally-found-elsewhere': ({ where }) => `Retrouvé ailleurs : ${where}.`,
  'tally-kept': ({ box }) => `Le décompte de l’incubateur ${box} est conservé.`,
  'tally-kept-before': ({ box }) =>
    `Ce décompte de l’incubateur ${box} était déjà conservé : il n’y figure qu’une fois.`,
  'tally-put-back-kept': ({ box }) =>
    `L’incubateur ${box} est noté vérifié et remis en place. Ses fenêtres et le plan ont été recalculés.`,
  'tally-empty-left-or-gone': () =>
    'Une case vide contenait un œuf sorti ou perdu : la survie tirée des cases vides est un maximum.',
  'tally-found-in-place': () => 'à sa place',
  'tally-found-not-found': () => 'introuvable',
  'tally-found-carried-away': () => 'emporté',
  'tally-found-found-elsewhere': () => 'retrouvé ailleurs',
};

const outcome: Phrases<OutcomeWords> = {
  'outcome-still': ({ box, day: at, share: of }) =>
    `${box}, vérifié et remis en place le ${day(at)} : ${share(of)} étaient encore dans l’incubateur.`,
  'outcome-left': ({ box, day: at, share: of }) =>
    `${box}, levé le ${day(at)} : ${share(of)} des vivants y étaient encore.`,
  'outcome-hatched': ({ box, day: at, least, most }) =>
    least >= most - 0.001
      ? `${box}, ouvert le ${day(at)} : ${share(least)} avaient éclos.`
      : `${box}, ouvert le ${day(at)} : au moins ${share(least)} et au plus ${share(most)} avaient éclos; une case vide peut être l’un ou l’autre.`,
  'outcome-seen': ({ box, stage, day: at, share: of }) =>
    of === null
      ? `${box} : ${stage}, vu le ${day(at)}.`
      : `${box} : ${stage}, vu chez ${share(of)} le ${day(at)}.`,
  'outcome-said': ({ asOf, from, to, share: of }) =>
    `Le ${shortDay('fr', asOf)}, la prévision donnait ${share(of)} pour ce jour (${of > to ? `9 fois sur 10, au plus ${share(to)}` : of < from ? `9 fois sur 10, au moins ${share(from)}` : `80 % : de ${share(from)} à ${share(to)}`})`,
  'outcome-agrees': () => 'dans l’intervalle',
  'outcome-early': () => 'le développement devançait la prévision',
  'outcome-late': () => 'le développement était en retard sur la prévision',
  'outcome-none': () => 'Rien n’a encore été levé, vérifié ou vu qui puisse être comparé.',
};

const command: Phrases<LiftingCommandWords> = {
  'cli-lifting': () =>
    'quand les incubateurs peuvent être levés, avec quelle certitude, et ce que coûtent les autres jours',
  'cli-lifting-as-of': () => 'tel que connu à cette date (année-mois-jour)',
  'cli-lifting-approve': () => 'approuver le plan tel quel, en votre nom',
  'cli-lifting-outcome': () =>
    'comparer les fenêtres telles qu’elles étaient avec ce qui a été trouvé à la levée',
  'cli-lifting-title': ({ day: at }) => `Levée, telle que connue le ${day(at)}`,
  'cli-lifting-would': () => 'Ce qui rendrait un meilleur jour possible',
  'cli-tally': () =>
    'noter ce qui a été compté dans un incubateur levé; sans incubateur, énumérer les décomptes',
  'cli-tally-box': () => 'l’incubateur compté',
  'cli-tally-empty': () => 'cases vides',
  'cli-tally-dead': () => 'œufs et alevins vésiculés morts',
  'cli-tally-alive': () => 'œufs et alevins vésiculés vivants encore dans l’incubateur',
  'cli-tally-alive-eggs': () =>
    'des vivants, œufs non éclos : distingués des alevins vésiculés, ils bornent l’éclosion',
  'cli-tally-date': () => 'jour du décompte (année-mois-jour); aujourd’hui si non précisé',
  'cli-tally-part': () => 'la partie comptée, telle que nommée dans la saison',
  'cli-tally-counter': () => 'qui a compté',
  'cli-tally-found': () => 'in-place, not-found, carried-away ou found-elsewhere',
  'cli-tally-kind': () =>
    'morts d’une sorte, sorte=nombre : neverFertilised, beforeEyeUp, eyedDied, hatchedDied, fungus, silted, cannotTell',
  'cli-tally-silt': () => 'épaisseur de limon, mm',
  'cli-tally-damage': () => 'ce qui est brisé',
  'cli-tally-note': () => 'une note',
  'cli-tally-put-back': () => 'l’incubateur a seulement été vérifié et remis en place : pas de levée',
  'cli-tally-stands': () => 'il en sort plus qu’il n’en a été mis, et le compte est maintenu',
  'cli-tally-entry': () => 'un nom pour cette saisie; envoyée de nouveau, elle ne compte qu’une fois',
  'cli-tally-none': () => 'Aucun incubateur n’a encore été décompté.',
  'column-day': () => 'Jour',
  'column-site': () => 'Site',
  'column-boxes': () => 'Incubateurs',
  'column-chance': () => 'Probabilité',
  'column-still': () => 'Encore dedans',
  'column-out': () => 'Sortis du gravier',
  'column-blocked': () => 'Exclu',
  'column-empty': () => 'Vides',
  'column-dead': () => 'Morts',
  'column-alive': () => 'Vivants',
  'column-planted': () => 'Mis',
  'column-counter': () => 'Compté par',
};

export const lifting = { ...plan, ...tally, ...outcome, ...command };
