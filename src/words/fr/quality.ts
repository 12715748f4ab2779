import type { QualityWords } from '../../quality/words.js';
import { dayAndTime, decimal, longDay, percent, whole } from '../format.js';

const d = (value: number | undefined, digits = 1) => decimal('fr', value ?? Number.NaN, digits);
const n = (value: number | undefined) => whole('fr', value ?? 0);
const counted = (count: number | undefined, one: string, more: string) =>
  count === 1 ? one : `${n(count)} ${more}`;
const day = (at: number) => longDay('fr', at).replace(/^1 /, '1er ');
const added = (quantity: 'temperature' | 'clock', add: number) =>
  quantity === 'temperature'
    ? `${add > 0 ? '+' : '−'}${d(Math.abs(add), 2)} °C`
    : `${add > 0 ? '+' : '−'}${clockTime(Math.abs(add))}`;
const clockTime = (ms: number) => (ms < 5_400_000 ? `${n(ms / 60_000)} min` : `${d(ms / 3_600_000, 2)} h`);
/** A terminal knows no zone of the group: its moments are in UTC, and say so. */
const moment = (at: number, zone: string) => `${dayAndTime('fr', at, zone)}${zone === 'UTC' ? ' UTC' : ''}`;
const batteryFigure = (value: number, unit: 'V' | '%' | null) =>
  unit === '%' ? `${d(value, 0)} %` : `${d(value, 2)} V`;
const flags: Readonly<Record<number, string>> = {
  1: 'pour information',
  2: 'pour information',
  3: 'douteux, encore utilisé',
  4: 'rejeté, non utilisé',
  9: 'manquant',
};
const verdict = { good: 'bonnes', suspect: 'douteuses', fail: 'inutilisables' } as const;
const later = (hours: number | undefined) => ((hours ?? 0) > 0 ? 'plus tard' : 'plus tôt');

/** The checks on readings in French (fr-CA). */
export const quality: { [Code in keyof QualityWords]: (words: QualityWords[Code]) => string } = {
  'check-gross-range': () => 'Plage plausible',
  'check-climatology': () => 'Habituel pour la saison',
  'check-spike': () => 'Pointe isolée',
  'check-rate-of-change': () => 'Vitesse de variation',
  'check-flat-line': () => 'Ligne plate',
  'check-neighbour': () => 'À côté de ses voisines',
  'check-in-air': () => 'Dans l’air',
  'check-in-snow': () => 'Dans la neige ou la sloche',
  'check-frozen-in': () => 'Pris dans la glace ?',
  'check-sheltered': () => 'Enfoui ou abrité',
  'check-battery': () => 'Pile',
  'check-clock': () => 'Horloge',
  'check-outside-deployment': () => 'Avant la mise à l’eau ou après le retrait',
  'check-ice-bath-bias': () => 'Bain de glace',
  'check-plateau-bias': () => 'Écart au palier de congélation',
  'check-memory': () => 'Mémoire',
  'finding-gross-range': ({ figures, unit }) =>
    `${counted(figures.readings, 'Une lecture', 'lectures')} de ${d(figures.least, 2)} à ${d(figures.most, 2)} ${unit} : hors de ${d(figures.low)} à ${d(figures.high)} ${unit}.`,
  'finding-climatology': ({ figures, unit }) =>
    `La moyenne du jour était de ${d(figures.mean)} ${unit} ; en ${n(figures.years)} autres années, les jours de cette saison se tenaient entre ${d(figures.low)} et ${d(figures.high)}. Au-delà de ${d(figures.margin)} de plus, elle est mise en doute.`,
  'finding-spike': ({ figures, unit }) =>
    `Une lecture de ${d(figures.value, 2)} ${unit} s’écarte de ${d(Math.abs(figures.off ?? 0), 2)} de la moyenne de ses deux voisines ; la limite est de ${d(figures.limit)}.`,
  'finding-rate-of-change': ({ figures, unit }) =>
    `Variation de ${d(figures.change, 2)} ${unit} en ${n(figures.minutes)} minutes : plus de trois écarts types des 25 heures d’avant, et plus de ${d(figures.floor)} par heure.`,
  'finding-flat-line': ({ figures, unit, flag }) =>
    `${n(figures.readings)} lectures de suite (${d(figures.hours, 0)} h) valent ${d(figures.value, 2)} ${unit} ; à la résolution de cet enregistrement, ${n(figures.count)} de suite ${flag === 4 ? 'sont rejetées' : 'sont douteuses'}.`,
  'finding-neighbour': ({ figures, unit }) =>
    figures.step === undefined
      ? `Pendant ${n(figures.days)} jours, elle s’écarte de ${d(figures.off, 1)} ${unit} de ce que ${counted(figures.neighbours, 'dit une voisine', 'voisines disent')} ; d’autres années ont montré jusqu’à ${d(figures.limit, 1)}. Le capteur a pu dériver, ou l’eau d’ici est autre.`
      : `D’une lecture à la suivante, un saut de ${d(figures.step, 1)} ${unit} qui est resté (${d(figures.off, 1)}), sans saut chez les voisines. Le capteur a pu se dérégler.`,
  'finding-in-air': ({ figures, unit }) =>
    `Pendant ${n(figures.hours)} heures, elle a varié de ${d(figures.swing)} ${unit} par jour (habituel ici : ${d(figures.usual)}), de ${d(figures.low)} à ${d(figures.high)}, comme l’air et non comme l’eau. L’enregistreur était sans doute hors de l’eau.`,
  'finding-in-snow': ({ figures, unit }) =>
    `Pendant ${n(figures.hours)} heures, elle est descendue à ${d(figures.low, 2)} ${unit} et a suivi l’air, avec retard et affaiblie (${percent('fr', figures.share ?? 0)} de sa variation) : comme sous la neige ou dans la sloche au-dessus de l’eau.`,
  'finding-frozen-in': ({ figures, unit }) =>
    `Pendant ${n(figures.hours)} heures, elle est restée sous ${d(figures.limit)} ${unit}, jusqu’à ${d(figures.low, 2)}, presque sans bouger ; l’eau courante ne devient pas si froide. L’enregistreur était sans doute dans la glace ou la sloche.${(figures.freezing ?? 0) >= 1 ? ` ${counted(figures.freezing, 'Une heure', 'heures')} à −0,7 ou moins : ce qui se trouve à côté a pu geler.` : ''}${Math.abs(figures.zero ?? 0) >= 0.03 ? ` Compté depuis ${d(figures.zero, 2)}, ce que cet enregistreur montre dans l’eau à 0 °C.` : ''}`,
  'finding-sheltered': ({ figures }) =>
    `Pendant ${n(figures.days)} jours, sa variation journalière était de ${percent('fr', figures.share ?? 0)} de celle des voisines ; d’habitude ${percent('fr', figures.usual ?? 0)}. L’enregistreur est peut-être enfoui dans le gravier, ou dans une eau dormante.`,
  'finding-battery': ({ figures }) =>
    [
      ...(figures.missing === undefined
        ? []
        : [
            `${percent('fr', figures.missing)} des lectures des ${n(figures.days)} derniers jours manquent, de plus en plus, après un enregistrement complet : la pile s’épuise peut-être.`,
          ]),
      ...(figures.last === undefined
        ? figures.missing === undefined || figures.remark === 1
          ? []
          : ['Les fichiers ne disent rien de la pile : seules les lectures manquantes en parlent.']
        : [
            figures.percent === 1
              ? `Il restait ${d(figures.last, 0)} % de la pile à la lecture du fichier; à ${d(figures.limit, 0)} % et moins, elle est faible.`
              : `La pile était à ${d(figures.last, 2)} V à la fin, ${d(figures.highest, 2)} V au plus haut; sous ${percent('fr', figures.limit ?? 0)} de cette valeur, elle est faible.`,
          ]),
      ...(figures.remark === 1 ? ['Une remarque du fichier la dit faible.'] : []),
      ...(figures.early === undefined
        ? []
        : [
            `L’enregistrement s’arrête ${counted(figures.early, 'un jour', 'jours')} avant que l’enregistreur soit retiré de l’eau.`,
          ]),
      ...(figures.missing === undefined
        ? ['Ses lectures n’en sont pas douteuses. Changez la pile avant de le remettre à l’eau.']
        : []),
    ].join(' '),
  'finding-clock': ({ figures }) =>
    figures.change === 1
      ? `À partir d’ici, sa journée vient ${d(Math.abs(figures.hours ?? 0), 2)} h ${later(figures.hours)} qu’avant, à côté de ses voisines : l’horloge a sauté.`
      : figures.change === 2
        ? `Sur cet intervalle, sa journée s’est déplacée de ${d(Math.abs(figures.hours ?? 0), 2)} h, ${later(figures.hours)}, à côté de ses voisines : l’horloge a dérivé.`
        : `Sa journée vient ${d(Math.abs(figures.hours ?? 0), 1)} h ${later(figures.hours)} que celle de ${counted(figures.neighbours, 'sa voisine', 'voisines')} : l’horloge suit peut-être un autre fuseau.`,
  'finding-outside-deployment': ({ figures, unit }) =>
    `Un saut de ${d(Math.abs(figures.step ?? 0))} ${unit} en deux heures ${figures.after === 1 ? 'vers la fin de l’enregistrement' : 'vers son début'} : ${d(figures.hours, 0)} heures au-delà ne sont sans doute pas de l’eau. La saison ne dit pas quand l’enregistreur a été ${figures.after === 1 ? 'retiré' : 'mis à l’eau'}.`,
  'finding-ice-bath-bias': ({ figures }) =>
    `Dans la glace fondante, il a montré ${[
      ...(figures.before === undefined ? [] : [`${d(figures.before, 2)} °C avant`]),
      ...(figures.after === undefined ? [] : [`${d(figures.after, 2)} °C après`]),
    ].join(
      ' et ',
    )} ; c’est retranché de ses lectures.${figures.drift === undefined ? '' : ` Il a dérivé de ${d(figures.drift, 2)} °C entre les deux, ${Math.abs(figures.drift) > (figures.accuracy ?? 0) ? 'plus' : 'pas plus'} que sa précision annoncée de ${d(figures.accuracy, 2)} °C.`}`,
  'finding-plateau-bias': ({ figures, flag }) =>
    `Sous la glace, où l’eau est à 0 °C, il a montré ${d(figures.bias, 2)} °C pendant ${n(figures.days)} jours : ${flag === 3 ? 'au-delà de' : 'dans'} sa précision annoncée de ${d(figures.accuracy, 2)} °C.`,
  'finding-memory': ({ figures }) =>
    `Sa mémoire de ${n(figures.memory)} lectures sera pleine le ${day((figures.full ?? 0) / 86_400_000)}, à une toutes les ${n(figures.interval)} minutes : avant la levée (${day((figures.lifted ?? 0) / 86_400_000)}). Lisez-le et relancez-le avant, ou espacez les lectures.`,
  'check-source-gross-range': () =>
    'Contrôle du manuel QARTOD pour la température in situ (IOOS) ; limites pour ce genre de station : les nôtres.',
  'check-source-climatology': () => 'Contrôle du manuel QARTOD ; saison de 31 jours et marge : les nôtres.',
  'check-source-spike': () => 'Contrôle du manuel QARTOD ; limites : les nôtres.',
  'check-source-rate-of-change': () =>
    'Contrôle du manuel QARTOD avec ses trois écarts types de 25 heures, qui ne fait que douter ; vitesse minimale : la nôtre.',
  'check-source-flat-line': () =>
    'Contrôle du manuel QARTOD (3 égales douteuses, 5 rejetées), nombres relevés où la résolution est grossière ; le palier de glace, ±0,3 °C, est épargné : le nôtre.',
  'check-source-neighbour': () => 'Contrôle suggéré du manuel QARTOD ; limites : les nôtres.',
  'check-source-in-air': () =>
    'Limites : les nôtres. L’eau courante se refroidit sous 0 °C d’au plus 0,04 °C environ (Osterkamp et coll. 1983).',
  'check-source-in-snow': () =>
    'Limites de la neige : les nôtres. L’eau courante se refroidit sous 0 °C d’au plus 0,04 °C environ (Osterkamp et coll. 1983).',
  'check-source-frozen-in': () =>
    'Bandes (−0,2 et −0,7 °C) : les nôtres. L’eau courante se refroidit sous 0 °C d’au plus 0,04 °C environ (Osterkamp et coll. 1983).',
  'check-source-sheltered': () => 'Le nôtre.',
  'check-source-battery': () =>
    'Le nôtre; tensions de fin des piles (lithium 2,0 sur 3,6 ou 3,0 V, alcaline 0,9 sur 1,5 V, plomb 10,5 sur 12 V) et 20 % de charge : pratique courante.',
  'check-source-clock': () =>
    'Le nôtre : corrélation croisée de la variation journalière avec les voisines, en heures.',
  'check-source-outside-deployment': () => 'Le nôtre : un saut que l’eau ne fait pas.',
  'check-source-ice-bath-bias': () => 'Pratique courante : la glace fondante est à 0 °C.',
  'check-source-plateau-bias': () =>
    'Le nôtre : une rivière sous la glace est à 0 °C pendant des semaines, un étalonnage gratuit.',
  'check-source-memory': () => 'Calculé de la mémoire et de l’intervalle que la saison énonce.',
  'battery-said': ({ station, unit, highest, lowest, last, low, zone }) =>
    [
      ...(last === null || lowest === null || highest === null
        ? [`Pile à ${station}.`]
        : [
            `Pile à ${station} : ${batteryFigure(last.value, unit)} à la fin (${moment(last.at, zone)}), ${batteryFigure(lowest.value, unit)} au plus bas (${moment(lowest.at, zone)}), ${batteryFigure(highest.value, unit)} au plus haut.`,
          ]),
      ...(low === null ? [] : [`Le fichier la dit faible : « ${low.text} » (${moment(low.at, zone)}).`]),
    ].join(' '),
  'quality-still-looking': () =>
    'Les contrôles examinent encore les années antérieures de ce qui a été chargé : d’ici là, dates et épisodes peuvent changer.',
  'quality-title': () => 'Ce que disent les contrôles',
  'quality-answer': ({ doubted, ruled, offered }) =>
    [
      doubted === 0
        ? 'Les contrôles ne doutent de rien ici.'
        : doubted === 1
          ? 'Les contrôles doutent d’un intervalle.'
          : `Les contrôles doutent de ${counted(doubted, 'un intervalle', 'intervalles')}.`,
      ...(ruled === 0
        ? []
        : [ruled === 1 ? 'Un constat a été écarté.' : `${n(ruled)} constats ont été écartés.`]),
      ...(offered === 0
        ? []
        : [offered === 1 ? 'Une correction est proposée.' : `${n(offered)} corrections sont proposées.`]),
    ].join(' '),
  'quality-none': () => 'Les contrôles n’ont rien à dire de cet enregistrement.',
  'quality-more': ({ more }) => `${n(more)} de plus se trouvent dans le JSON.`,
  'quality-flag': ({ flag }) => flags[flag] ?? '',
  'quality-span': ({ from, to, zone }) =>
    `du ${dayAndTime('fr', from, zone)} au ${dayAndTime('fr', to, zone)}`,
  'quality-ruled': (ruling) =>
    `${ruling.by} a jugé ces lectures ${verdict[ruling.verdict]}, le ${dayAndTime('fr', ruling.at, ruling.zone)} : ${ruling.reason}`,
  'quality-verdict': () => 'Ces lectures sont',
  'quality-verdict-good': () => 'bonnes : le contrôle se trompe',
  'quality-verdict-suspect': () => 'douteuses, mais utilisées',
  'quality-verdict-fail': () => 'à ne pas utiliser',
  'quality-reason': () => 'Raison',
  'quality-overrule': () => 'Écarter',
  'quality-overrule-save': () => 'Écarter ce contrôle',
  'quality-ruling-withdraw': () => 'Retirer la décision',
  'quality-offer': ({ quantity, add, course }) =>
    quantity === 'temperature'
      ? `Correction proposée : ${added(quantity, add)} aux lectures de cet enregistreur.`
      : `Correction proposée : ${added(quantity, add)} à l’horloge de cet enregistreur${course === 'rising' ? ', croissant depuis zéro sur cet intervalle' : ' à partir d’ici'}.`,
  'quality-offer-accept': () => 'Accepter la correction',
  'quality-offer-no-logger': () =>
    'Elle pourra être acceptée quand la saison nommera l’enregistreur qui était là (une mise à l’eau).',
  'quality-fills': ({ day: at }) => `sa mémoire sera pleine le ${day(at)}`,
  'quality-corrections': () => 'Corrections acceptées',
  'quality-correction': ({ logger, quantity, add, course, by, at, zone }) =>
    `${logger} : ${added(quantity, add)} à ${quantity === 'clock' ? 'son horloge' : 'ses lectures'}${course === 'rising' ? ', croissant' : ''} ; acceptée par ${by} le ${dayAndTime('fr', at, zone)}.`,
  'quality-undo': () => 'Annuler comme tout changement de la saison',
  'quality-kept': () =>
    'Aucune lecture n’est jamais effacée : un constat dit seulement si elle est utilisée.',
  'quality-no-finding': ({ station, finding }) =>
    `Il n’y a pas (ou plus) de constat ${finding} à ${station} : rouvrez la page de la station.`,
  'quality-nothing-offered': ({ finding }) => `Le contrôle ne propose aucune correction pour ${finding}.`,
  'quality-no-deployment': ({ station }) =>
    `La saison ne nomme aucun enregistreur à ${station} à ce moment : une correction appartient à une mise à l’eau. Ajoutez-la d’abord.`,
  'quality-no-reason': () => 'Dites pourquoi le contrôle est écarté : la raison reste à côté de la décision.',
  'quality-no-ruling': ({ station, finding }) => `Personne n’a rien décidé sur ${finding} à ${station}.`,
  'cli-checks': () => 'ce que disent les contrôles des lectures',
  'cli-checks-station': () => 'une station ; toutes si elle est omise',
};
