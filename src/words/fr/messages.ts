import type { Certainty, SpellKind } from '../../../forecasting/spells/spell.js';
import type { MessagesRefusedWords } from '../../messages/refused.js';
import type { DeliveryWords, FeedWords, LetterWords } from '../../messages/words.js';
import type { NetworkWords } from '../../network/index.js';
import { decimal, list, longDay, percent, whole } from '../format.js';
import { de, que } from './elision.js';

type Words = LetterWords & DeliveryWords & FeedWords & NetworkWords & MessagesRefusedWords;

const n = (count: number) => whole('fr', count);
const day = (number: number) => longDay('fr', number).replace(/^1 /, '1er ');
const counted = (count: number, one: string, many: string) => `${n(count)} ${count < 2 ? one : many}`;
const span = (hours: number) =>
  hours < 72 ? counted(Math.round(hours), 'heure', 'heures') : `${n(hours / 24)} jours`;
const boxes = (names: readonly string[]) => {
  if (names.length > 6)
    return `${counted(names.length, 'incubateur', 'incubateurs')} (${names.slice(0, 4).join(', ')} …)`;
  return names.length === 1 ? `incubateur ${names[0]}` : `incubateurs ${list('fr', names)}`;
};
const ofStage = (stage: string) => (/^[aeéiouœ]/i.test(stage) ? `de l’${stage}` : `de ${stage}`);

const kinds: Readonly<Record<SpellKind, string>> = {
  'too-warm': 'eau trop chaude',
  freezing: 'gel',
  'sudden-change': 'changement brusque de température',
  'too-cold': 'eau trop froide',
  exposure: 'peut-être hors de l’eau ou pris dans la glace',
  freshet: 'crue',
  'break-up': 'débâcle hivernale',
  'low-water': 'eau très basse',
};
const changes = {
  opened: '',
  worsened: 'Plus grave : ',
  ended: 'Terminé : ',
  confirmed: 'Confirmé : ',
  withdrawn: 'Retiré : ',
  past: 'Découvert après coup : ',
} as const;
const certainties: Readonly<Record<Certainty, string>> = {
  measured: 'mesuré',
  estimated: 'calculé d’après d’autres stations, non mesuré',
  possible: 'possible : personne ne l’a mesuré',
};
const lacking: Readonly<Record<string, string>> = {
  name: 'Il faut un nom, 80 caractères au plus.',
  email: 'Ce n’est pas une adresse de courriel.',
  webhook: 'Le webhook doit être une adresse http ou https sans mot de passe.',
  quiet: 'Les heures calmes sont deux heures du jour, comme 21:00 et 07:00.',
};

/** Ce que disent les messages, et ce qui advient des envois et des sources. */
export const messages: { [Code in keyof Words]: (words: Words[Code]) => string } = {
  'letter-subject': ({ group, head, more }) =>
    `${group} : ${head}${more === 0 ? '' : ` (et ${counted(more, 'autre nouvelle', 'autres nouvelles')})`}`,
  'letter-dear': ({ name }) => `${name},`,
  'letter-several': ({ things }) => `ce message annonce ${n(things)} choses.`,
  'letter-further': ({ things }) => `Et ${n(things)} de plus du même genre ; chacune figure sur les pages.`,
  'letter-means': () => 'Ce que cela signifie',
  'letter-might': () => 'Ce qu’on pourrait faire',
  'letter-cautions': () => 'Mises en garde',
  'letter-acknowledge': () => 'J’en ai pris connaissance',
  'letter-pages': () => 'Ouvrir la saison',
  'letter-why': ({ group }) =>
    `Vous recevez ceci parce ${que(group)} vous compte parmi les personnes à prévenir.`,
  'letter-unsubscribe': () => 'Se désabonner',
  'letter-chart': ({ box }) =>
    `L’eau de l’incubateur ${box} : cinq semaines avant ce message (trait rouge) et trois après`,
  'letter-chart-spell': ({ station }) => `L’eau à ${station} autour de cet épisode`,
  'letter-chart-key': () =>
    'Trait continu : mesuré. Tirets : comblé d’après d’autres stations. Points : projeté. La bande contient la valeur 8 fois sur 10.',
  'letter-chart-axis': () => 'moyenne du jour (°C)',
  'letter-spell-head': ({ kind, severity, certainty, change, boxes: names, station }) => {
    const what = `${kinds[kind]}, ${names.length === 0 ? station : boxes(names)}`;
    const possible = certainty !== 'measured' && change !== 'withdrawn' && kind !== 'exposure';
    const name =
      severity === 'lethal'
        ? kind === 'exposure'
          ? 'urgent : '
          : `épisode létal${possible ? ' possible' : ''} : `
        : possible
          ? 'épisode possible : '
          : '';
    const said = `${name}${what}`;
    return changes[change] === ''
      ? `${said.slice(0, 1).toUpperCase()}${said.slice(1)}`
      : `${changes[change]}${said}`;
  },
  'letter-spell-from': () => 'du',
  'letter-spell-to': () => 'au',
  'letter-spell-peak': () => 'valeur extrême',
  'letter-spell-hours': () => 'heures',
  'letter-spell-beyond': () => 'au-delà de la limite',
  'letter-spell-beyond-value': ({ degreeHours }) => `${decimal('fr', degreeHours, 1)} degrés-heures`,
  'letter-spell-station': () => 'station',
  'letter-spell-sources': ({ sources }) => `Sources : ${sources.join(' ; ')}.`,
  'letter-spell-boxes': () => 'incubateurs',
  'letter-spell-eggs': () => 'œufs exposés',
  'letter-spell-stages': () => 'stades possibles, le plus probable d’abord',
  'letter-spell-known': () => 'comment on le sait',
  'letter-spell-certainty': ({ certainty, chance }) =>
    `${certainties[certainty]}${chance === null ? '' : `, probable à ${percent('fr', chance)}`}`,
  'letter-spell-still': () => 'toujours en cours à la dernière lecture',
  'letter-spell-means': ({ kind, certainty, change }) => {
    if (change === 'withdrawn') return 'Un relevé ultérieur ne le montre pas. Il n’y a rien à faire.';
    if (kind === 'exposure')
      return 'L’enregistreur dans cet incubateur ou contre lui mesure comme s’il était dans l’air ou la glace. L’incubateur est peut-être hors de l’eau ou pris dans la glace, ou seul l’enregistreur s’est détaché. Tant que personne n’a regardé, on n’en sait rien.';
    if (kind === 'freshet' || kind === 'break-up' || kind === 'low-water')
      return 'Le limnimètre le montre ; personne n’a mesuré ce que les incubateurs ont subi. Aucune mortalité n’en est tirée.';
    const over = change === 'ended' || change === 'past' ? ' C’est terminé.' : '';
    return certainty === 'measured'
      ? `L’eau mesurée a dépassé, de plus que la précision de l’enregistreur, la limite ci-dessus pour un stade où ces œufs peuvent être. Les heures au-delà d’une limite disent la gravité, non le nombre d’œufs morts.${over}`
      : `L’eau, non mesurée ici mais calculée d’après d’autres stations ou projetée, dépasse la limite ci-dessus pour un stade où ces œufs peuvent être. Le prochain relevé le confirmera ou le retirera.${over}`;
  },
  'letter-spell-might': ({ kind, change }) => {
    if (change === 'withdrawn') return 'Rien.';
    if (kind === 'exposure')
      return 'Quand la glace et l’eau seront sûres, regardez de la rive si l’incubateur est sous l’eau, et tranchez sur la page. N’ouvrez pas l’incubateur.';
    if (kind === 'freshet' || kind === 'break-up' || kind === 'low-water')
      return 'Quand l’eau sera de nouveau sûre, regardez si les incubateurs sont toujours en place.';
    return 'Regardez l’incubateur et ses voisins sur les pages, relevez un enregistreur s’il peut être atteint sans danger, et consultez la personne biologiste avant de déplacer ou d’ouvrir quoi que ce soit.';
  },
  'letter-window-head': ({ stage, days, later, boxes: count }) =>
    `La fenêtre ${ofStage(stage)} s’est déplacée, jusqu’à ${counted(days, 'jour', 'jours')} plus ${later ? 'tard' : 'tôt'} (${counted(count, 'incubateur', 'incubateurs')})`,
  'letter-window-row': ({ boxes: names, before, after }) =>
    `${boxes(names)} : la moitié des œufs au ${day(after)}, auparavant au ${day(before)}`,
  'letter-window-means': () =>
    'De nouvelles lectures, ou des jours autres que prévu, ont changé ce qu’on sait de l’eau. Les dates des pages et du calendrier ont suivi.',
  'letter-window-might': () => 'Voyez si une visite, une équipe ou un permis dépend de l’ancienne date.',
  'letter-stage-head': ({ stage, boxes: names }) => `${stage}, stade probablement atteint : ${boxes(names)}`,
  'letter-stage-when': ({ first, last }) =>
    first === last
      ? `On estime que la moitié des œufs l’ont passé le ${day(first)}.`
      : `On estime que la moitié des œufs l’ont passé entre le ${day(first)} et le ${day(last)}.`,
  'letter-stage-means': ({ stage }) =>
    `L’eau depuis la fécondation atteint ce que demande le stade « ${stage} » pour l’œuf médian. Personne ne l’a vu ; la fenêtre sur les pages dit à quel point c’est sûr.`,
  'letter-stage-might': ({ stage }) =>
    `Si des œufs du même lot peuvent être vus sans ouvrir d’incubateur (dans un bac de pisciculture, par exemple), regardez-les et notez « ${stage} » comme observé : toutes les fenêtres suivantes en seront précisées.`,
  'letter-lifting-head': ({ day: on, inDays }) =>
    inDays === 0
      ? 'La fenêtre de levée est ouverte aujourd’hui'
      : `La fenêtre de levée approche : ${day(on)}, dans ${counted(inDays, 'jour', 'jours')}`,
  'letter-lifting-chance': ({ chance, boxes: count }) =>
    `${counted(count, 'incubateur', 'incubateurs')} au plan ; la probabilité que chacun respecte les deux niveaux fixés à sa date est de ${percent('fr', chance)}.`,
  'letter-lifting-means': ({ approved }) =>
    approved ? 'Le plan est approuvé.' : 'Le plan reste un projet tant qu’une personne ne l’a pas approuvé.',
  'letter-lifting-might': () =>
    'Ouvrez le plan, voyez ce que coûte un jour plus tôt ou plus tard, consultez la personne biologiste, bloquez les jours impossibles et imprimez les fiches.',
  'letter-silent-head': ({ station, hours }) => `${station} se tait depuis ${span(hours)}`,
  'letter-silent-says': ({ last, usualHours }) =>
    `Sa dernière lecture est du ${last}. Jusqu’à ${span(usualHours)}, ce serait habituel.`,
  'letter-silent-means': () =>
    'Les incubateurs qui s’appuient sur cette station sont prévus entre-temps d’après ses voisines ou les hivers passés, avec des fenêtres plus larges. Une eau nuisible y serait vue tard.',
  'letter-silent-might': () =>
    'Voyez si la station a du courant et une liaison, ou si son fournisseur a changé quelque chose. Personne n’a à aller sur la glace pour cela.',
  'letter-feed-head': ({ feed, hours }) =>
    `La source ${feed} n’apporte rien de nouveau depuis ${span(hours)}`,
  'letter-feed-says': ({ since }) =>
    `La dernière nouvelle lecture est arrivée le ${since}. On essaie de nouveau, avec des pauses croissantes.`,
  'letter-feed-means': () => 'Ou bien plus rien n’est mesuré, ou bien cela n’arrive plus ici.',
  'letter-feed-might': () => 'La page des messages montre ce que la source a répondu en dernier.',
  'letter-gap-head': ({ station }) => `Des lectures ${de(station)} manquent pour de bon`,
  'letter-gap-says': ({ feed, from, to }) =>
    `On a demandé à la source ${feed} tout depuis le ${from} ; ce que son fournisseur garde encore commence le ${to}.`,
  'letter-gap-means': () =>
    'L’intervalle doit être comblé d’après d’autres stations, à moins que quelqu’un ne l’ait gardé. Un épisode nuisible ne peut y être vu.',
  'letter-gap-might': () => 'Demandez au fournisseur la partie manquante en fichier, et chargez-la.',
  'letter-weekly-head': ({ day: on }) => `La semaine jusqu’au ${day(on)}`,
  'letter-weekly-box': ({ box, stage, windows }) =>
    `${box} : ${stage}${windows === '' ? '' : ` ; ${windows}`}`,
  'letter-weekly-window': ({ stage, from, to }) => `${stage} du ${day(from)} au ${day(to)}`,
  'letter-weekly-lifting': ({ day: on, boxes: count }) =>
    `Levée : à partir du ${day(on)}, ${counted(count, 'incubateur', 'incubateurs')} au plan.`,
  'letter-weekly-water': ({ box, day: on }) => `Eau mesurée jusqu’au ${day(on)} à ${box}.`,
  'letter-weekly-means': () =>
    'Chaque stade va du jour où 5 œufs sur 100 y sont au jour où 95 y sont, chaque borne ayant sa propre incertitude : les pages la montrent en entier.',
  'letter-weekly-might': () => 'Voyez sous chaque incubateur ce qui préciserait ses fenêtres.',
  'letter-test-head': () => 'Un message d’essai',
  'letter-test-says': () =>
    'Quelqu’un a demandé un essai sur la page des messages. Il est arrivé : les autres arriveront aussi.',
  'delivery-accepted': ({ answer }) => `Accepté : ${answer}`,
  'delivery-smtp-refused': ({ answer }) => `Le serveur de courriel le refuse pour de bon : ${answer}`,
  'delivery-smtp-later': ({ answer }) => `Le serveur de courriel dit « plus tard » : ${answer}`,
  'delivery-smtp-sign-in': ({ answer }) =>
    `Le serveur de courriel n’accepte pas nos nom et mot de passe : ${answer}`,
  'delivery-smtp-no-tls': ({ host }) =>
    `${host} n’offre pas de chiffrement (STARTTLS) : rien n’a été envoyé. N’indiquez smtpSecurity: none que pour un serveur joint sans réseau entre les deux.`,
  'delivery-smtp-too-slow': ({ host }) => `${host} n’a pas répondu à temps.`,
  'delivery-no-server': () =>
    'Aucun serveur de courriel n’est nommé dans les réglages (smtpHost) : ceci attend qu’il y en ait un.',
  'delivery-no-address': () => 'Cette personne n’a ni adresse de courriel ni webhook : rien n’a été envoyé.',
  'delivery-here': () => 'Gardé dans la boîte aux lettres de la démonstration.',
  'delivery-stopped': () => 'Le service s’est arrêté pendant l’envoi : il est renvoyé.',
  'feed-fresh': ({ readings, unusable }) =>
    `${counted(readings, 'nouvelle lecture', 'nouvelles lectures')}${unusable === 0 ? '' : `, ${counted(unusable, 'ligne inutilisable', 'lignes inutilisables')}`}.`,
  'feed-nothing-new': ({ unusable }) =>
    `Rien de nouveau${unusable === 0 ? '' : ` ; ${counted(unusable, 'ligne inutilisable', 'lignes inutilisables')}`}.`,
  'feed-same': () => 'La même chose que la dernière fois.',
  'feed-refused': ({ why }) => `Ce n’est pas un relevé : ${why.fr}`,
  'feed-empty': () => 'Une réponse vide.',
  'feed-no-folder': ({ folder }) => `Le dossier ${folder} n’existe pas ou ne peut être lu.`,
  'feed-files': ({ files, readings, refused }) =>
    `${counted(files, 'nouveau fichier', 'nouveaux fichiers')}, ${counted(readings, 'nouvelle lecture', 'nouvelles lectures')}${refused === 0 ? '' : ` ; ${counted(refused, 'fichier refusé', 'fichiers refusés')}`}.`,
  'feed-pushed': ({ readings }) =>
    `${counted(readings, 'nouvelle lecture reçue', 'nouvelles lectures reçues')}.`,
  'network-private': ({ host, address }) =>
    `${host} mène à ${address}, dans cette machine ou le réseau qui l’entoure : refusé. Nommez-le sous privateAddresses dans les réglages si c’est voulu.`,
  'network-not-an-address': ({ url }) => `« ${url} » n’est pas une adresse http ou https.`,
  'network-unknown-host': ({ host }) => `L’hôte ${host} n’existe pas, ou il n’y a pas de réseau.`,
  'network-refused': ({ host, why }) => `${host} ne peut être joint (${why}).`,
  'network-too-slow': ({ host, seconds }) => `${host} n’a pas répondu en ${n(seconds)} secondes.`,
  'network-too-large': ({ host, bytes }) => `${host} a envoyé plus de ${n(bytes / 1e6)} Mo : abandonné.`,
  'network-broken-off': ({ host }) => `${host} s’est interrompu au milieu.`,
  'network-certificate': ({ host, why }) => `Le certificat de ${host} n’est pas digne de confiance (${why}).`,
  'network-redirects': ({ host, to }) =>
    `${host} renvoie à ${to} : non suivi. Notez la nouvelle adresse si elle est juste.`,
  'network-redirects-private': ({ host, to }) =>
    `${host} renvoie à ${to}, dans cette machine ou le réseau qui l’entoure : refusé.`,
  'network-status': ({ host, status }) => `${host} a répondu ${String(status)}.`,
  'messages-unknown-person': () => 'Cette personne n’existe pas.',
  'messages-bad-person': ({ place }) => lacking[place] ?? `Ceci ne convient pas : ${place}.`,
  'feeds-unknown-station': ({ station }) => `La saison n’a pas de station « ${station} ».`,
  'feeds-no-readings': () => 'Il n’y a aucune lecture utilisable.',
};
