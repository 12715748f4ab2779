import type { HttpWords } from '../../http/words.js';
import type { Setting, SettingsWords } from '../../settings/index.js';
import { list, whole } from '../format.js';

const roleFr = (role: string) =>
  ({ coordinator: 'coordination', crew: 'équipe', reader: 'lecture' })[role] ?? role;

export const http: { [Code in keyof HttpWords]: (words: HttpWords[Code]) => string } = {
  'http-not-found': ({ path }) => `Il n’y a rien à ${path}.`,
  'http-no-method': ({ method, path }) => `${path} n’accepte pas ${method}.`,
  'http-failed': ({ reference }) =>
    `Le service a rencontré un problème; rien n’a été enregistré à moitié. Le journal en garde la trace sous ${reference}.`,
  'http-foreign-host': ({ host }) =>
    `Ce service ne répond pas au nom « ${host} » : ouvrez-le à l’adresse qu’il a affichée, ou inscrivez son adresse dans les réglages.`,
  'http-forged': () =>
    'Cette demande ne vient pas d’une page de ce service, ou la page est trop ancienne : rouvrez la page et recommencez.',
  'http-sign-in-first': () => 'Ouvrez d’abord une session, ou envoyez un jeton d’API.',
  'http-token-not-known': () =>
    'Ce jeton d’API est inconnu ou n’est plus valable : demandez-en un nouveau à la coordination.',
  'http-role': ({ role, needed }) =>
    `Votre rôle est « ${roleFr(role)} » : il faut ici le rôle « ${roleFr(needed)} ». Adressez-vous à la coordination.`,
  'http-body-too-large': ({ kilobytes }) => `L’envoi est trop gros : au plus ${whole('fr', kilobytes)} ko.`,
  'http-file-too-large': ({ megabytes }) =>
    `Le fichier est plus gros que ce que ce service accepte : au plus ${whole('fr', megabytes)} Mo. Le relevé d’un enregistreur est bien plus petit; envoyez le fichier d’origine, ou une année à la fois.`,
  'http-too-many-waiting': ({ files }) =>
    `${whole('fr', files)} fichiers attendent déjà : acceptez-les ou laissez-les d’abord.`,
  'http-waiting-too-large': ({ megabytes }) =>
    `Les fichiers en attente dépasseraient ${whole('fr', megabytes)} Mo : acceptez-les ou laissez-les d’abord.`,
  'http-too-many-files': ({ files }) =>
    `Trop de fichiers à la fois : au plus ${whole('fr', files)}. Envoyez-les en plusieurs fois.`,
  'http-too-many-fields': ({ fields }) => `Le formulaire a plus de ${whole('fr', fields)} champs.`,
  'http-not-a-form': () =>
    'Le formulaire n’est pas arrivé en entier : rouvrez la page et envoyez-le de nouveau.',
  'http-not-json': () => 'Ce qui a été envoyé n’est pas du JSON.',
  'http-one-layout': ({ files }) =>
    `Une disposition se conserve d’après un seul fichier, et ${whole('fr', files)} ont été envoyés : chargez les autres sans keepLayout.`,
  'http-not-these-values': ({ places }) =>
    `Ce qui a été envoyé ne convient pas à ${list('fr', places)} : /api/v1/openapi.json dit ce que chaque champ accepte.`,
  'http-not-this-type': ({ given, takes }) =>
    `Un contenu de type « ${given} » n’est pas accepté ici : envoyez ${takes}.`,
  'http-broken-off': () => 'L’envoi s’est interrompu : rien n’en a été gardé. Recommencez.',
  'http-too-slow': ({ seconds }) =>
    `Rien, ou presque rien, n’est arrivé pendant ${whole('fr', seconds)} secondes : la demande a été abandonnée. Recommencez avec une meilleure connexion.`,
  'http-unknown-file': ({ file }) =>
    `Aucun fichier « ${file} » n’est en attente : il a été accepté, laissé, ou jeté une fois son délai passé. Envoyez-le de nouveau.`,
  'http-archive-damaged': ({ file }) =>
    `${file} est endommagé ou n’est pas une archive zip : envoyez les fichiers qu’il contient.`,
  'http-archive-too-large': ({ file, megabytes }) =>
    `${file} dépasserait ${whole('fr', megabytes)} Mo une fois décompressé : envoyez ceux de ses fichiers qui sont des relevés.`,
  'http-archive-too-many': ({ file, files }) =>
    `${file} contient plus de ${whole('fr', files)} fichiers : envoyez ceux qui sont des relevés.`,
  'http-archive-locked': ({ file }) =>
    `${file} est protégé par un mot de passe : décompressez-le et envoyez son contenu.`,
  'http-archive-empty': ({ file }) => `${file} ne contient aucun fichier.`,
  'http-workbook-damaged': ({ file }) =>
    `${file} ne se lit pas comme un classeur : enregistrez-le en .xlsx ou en .csv et envoyez le résultat.`,
  'http-no-such-sheet': ({ file, sheet, sheets }) =>
    `${file} n’a pas de feuille « ${sheet} » : il a ${list('fr', sheets)}.`,
  'http-if-match-missing': () =>
    'Dites quelle version vous avez modifiée : envoyez If-Match avec l’ETag de la saison que vous avez lue.',
  'http-if-match-malformed': ({ given }) =>
    `If-Match valait « ${given} » : envoyez l’ETag de la saison que vous avez lue, par exemple "season-3".`,
  'http-bad-cursor': () => 'Ce curseur n’est pas de nous : recommencez sans curseur.',
  'http-wrong-password': () => 'Le nom ou le mot de passe est faux.',
  'http-slow-down': ({ seconds }) =>
    `Trop de mots de passe faux : réessayez dans ${whole('fr', seconds)} ${seconds === 1 ? 'seconde' : 'secondes'}.`,
  'http-password-short': ({ least }) => `Le mot de passe est trop court : au moins ${least} caractères.`,
  'http-password-long': ({ most }) => `Le mot de passe est trop long : au plus ${most} caractères.`,
  'http-name-taken': ({ name }) => `Il y a déjà un compte « ${name} » : choisissez un autre nom.`,
  'http-bad-name': () =>
    'Un nom commence par une lettre ou un chiffre et compte au plus 60 lettres, chiffres, espaces et . _ @ -.',
  'http-unknown-account': ({ name }) => `Il n’y a pas de compte « ${name} ».`,
  'http-last-coordinator': () =>
    'C’est le seul compte de coordination : créez-en d’abord un autre, sinon plus personne ne pourrait rien changer.',
  'http-first-coordinator': () =>
    'Le premier compte doit être à la coordination, sinon plus personne ne pourrait rien modifier.',
  'http-token-end': () => 'Le dernier jour d’un jeton est à venir : choisissez-en un plus tard.',
  'http-invitation-over': () =>
    'Cette invitation a été utilisée, n’est plus valable ou n’a jamais existé : demandez-en une nouvelle à la coordination.',
  'http-unknown-calendar': () =>
    'Il n’y a pas de calendrier à cette adresse, ou l’adresse a changé : demandez la nouvelle à la coordination.',
  'http-not-a-day': ({ name, given }) =>
    `${name} valait « ${given} » : écrivez la date année-mois-jour, par exemple 2026-02-15.`,
  'http-open': () =>
    'Personne n’a encore de compte : quiconque utilise cet ordinateur peut tout changer. « underice account add NOM » crée le premier.',
  'http-no-account': ({ host }) =>
    `Le service ne démarre pas : à ${host}, d’autres pourraient l’atteindre, et personne n’a de compte. Créez-en un d’abord avec « underice account add NOM », ou omettez --host.`,
  'http-group-no-address': ({ folder }) =>
    `Le service ne démarre pas : quand il y a plusieurs organisations, chacune répond sous son propre nom d’hôte. Donnez à celle de ${folder} son adresse (address) dans son settings.yaml, par exemple address: http://notre-riviere.localhost:8177.`,
  'http-group-same-host': ({ host, folder, other }) =>
    `Le service ne démarre pas : les organisations de ${other} et de ${folder} veulent toutes deux le nom d’hôte ${host}. Donnez à chacune le sien.`,
  'http-port-taken': ({ host, port }) =>
    `Le port ${port} à ${host} est utilisé par un autre programme : choisissez-en un autre avec --port.`,
  'http-no-such-host': ({ host }) =>
    `Cet ordinateur n’a pas l’adresse ${host} : omettez --host, ou nommez-en une des siennes.`,
  'http-serving': ({ address, folder }) =>
    `Underice répond à ${address}, pour la saison dans ${folder}. Ctrl-C l’arrête.`,
  'http-stopping': () => 'Underice termine ce qu’il a commencé et s’arrête.',
  'http-role-coordinator': () => 'coordination',
  'http-role-crew': () => 'équipe',
  'http-role-reader': () => 'lecture',
  'http-calendar-name': ({ group, box }) => (box === null ? group : `${group} : ${box}`),
  'http-calendar-window': ({ box, stage }) => `${box} : ${stage} (estimation)`,
  'http-calendar-window-about': ({ median, from, to }) =>
    `Des premiers aux derniers œufs. L’œuf médian : ${median}; 8 fois sur 10 ${to === null ? `à partir du ${from}` : `entre le ${from} et le ${to}`}.`,
  'http-calendar-download': ({ station }) => `Relever ${station}`,
  'http-calendar-download-about': ({ through }) =>
    `Les lectures s’arrêtent le ${through}. Seulement si on peut s’y rendre sans danger.`,
  'cli-serve': () => 'répondre par pages, API et calendrier sur cet ordinateur',
  'cli-serve-host': () => 'adresse où écouter (sinon 127.0.0.1, cet ordinateur seulement)',
  'cli-serve-port': () => 'port où écouter (sinon 8177)',
  'cli-account': () => 'qui peut ouvrir une session sur le service',
  'cli-account-add': () => 'créer un compte; le mot de passe est demandé, ou lu sur l’entrée standard',
  'cli-account-name': () => 'le nom pour ouvrir une session',
  'cli-account-role': () =>
    'coordinator (tout), crew (charger et noter) ou reader (regarder); sinon coordinator',
  'cli-account-list': () => 'énumérer les comptes',
  'cli-account-remove': () => 'retirer un compte et mettre fin à ses sessions',
  'cli-account-password': () => 'Mot de passe (10 caractères ou plus) : ',
  'cli-account-added': ({ name, role }) => `${name} peut ouvrir une session, rôle « ${roleFr(role)} ».`,
  'cli-account-removed': ({ name }) => `${name} ne peut plus ouvrir de session.`,
  'cli-account-none': () => 'Personne n’a de compte.',
  'column-role': () => 'rôle',
  'column-made': () => 'depuis',
  'cli-demo-serve': ({ date }) => `Les pages montrent la saison telle qu’elle était le ${date}.`,
};

const settingFr: Record<Setting, string> = {
  host: 'adresse où le service écoute',
  port: 'port où il écoute (0 : n’importe lequel de libre)',
  address: 'adresse que les gens tapent, lorsqu’un mandataire inverse se trouve devant',
  behindProxy: 'un mandataire inverse se trouve devant et dit d’où viennent les demandes',
  language: 'langue lorsque ni la personne ni le navigateur n’en disent une',
  log: 'lignes les moins importantes qui sont journalisées',
  uploadMegabytes: 'Mo au plus pour un envoi',
  unpackedMegabytes: 'Mo au plus pour une archive décompressée',
  filesAtOnce: 'fichiers au plus par formulaire ou archive',
  waitingFiles: 'fichiers au plus en attente d’être acceptés',
  waitingMegabytes: 'Mo au plus en attente',
  waitingHours: 'heures après lesquelles un fichier en attente est jeté',
  formKilobytes: 'ko au plus pour les champs d’un formulaire ou un document',
  patienceSeconds: 'secondes de silence après lesquelles un client est abandonné',
  requestSeconds: 'secondes au plus pour l’arrivée d’une demande',
  sessionDays: 'jours que dure une session',
  store:
    'où sont les lectures : embedded (dans le dossier de données) ou influx (sur un serveur); sinon, là où elles sont',
  influxUrl: 'adresse du serveur InfluxDB',
  influxDatabase: 'la base (ou le « bucket ») du groupe sur ce serveur',
  influxUser: 'nom d’utilisateur sur ce serveur',
  influxPassword: 'son mot de passe; mieux : UNDERICE_INFLUX_PASSWORD',
  influxToken: 'jeton d’un serveur 2.x ou hébergé; mieux : UNDERICE_INFLUX_TOKEN',
  influxOrganisation: 'organisation d’un serveur 2.x ou hébergé',
  smtpHost: 'serveur qui prend notre courriel ; sans lui, le courriel attend',
  smtpPort: 'son port',
  smtpSecurity:
    'starttls et tls n’envoient jamais sans chiffrement ; none seulement sans réseau entre les deux',
  smtpUser: 'nom auprès du serveur de courriel',
  smtpPassword: 'mot de passe auprès du serveur de courriel',
  smtpFrom: 'adresse d’où viennent les messages',
  smtpSeconds: 'secondes pendant lesquelles le serveur de courriel peut nous faire attendre',
  messageHours: 'heures après lesquelles un message qui ne passe pas est abandonné',
  windowMovedDays: 'jours dont une fenêtre doit se déplacer pour qu’on l’annonce',
  liftingNearDays: 'jours avant la fenêtre de levée où on l’annonce',
  silentHours: 'heures de silence d’une station à partir desquelles on l’annonce',
  privateAddresses:
    'ce que webhooks et sources peuvent joindre dans cette machine et le réseau qui l’entoure',
  feeds: 'stations dont les lectures arrivent d’elles-mêmes : dossiers surveillés, adresses interrogées',
};

export const settings: { [Code in keyof SettingsWords]: (words: SettingsWords[Code]) => string } = {
  'settings-unreadable': ({ file }) =>
    `Le fichier de réglages ${file} ne peut pas être lu : vérifiez le nom et que vous pouvez l’ouvrir.`,
  'settings-not-yaml': ({ file, line }) =>
    `Le fichier de réglages ${file} est endommagé à la ligne ${line} : écrivez un réglage par ligne, par exemple « port: 8177 ».`,
  'settings-unknown': ({ place, given, known }) =>
    `Il n’y a pas de réglage « ${given} » (dans ${place}) : il y a ${list('fr', known)}.`,
  'settings-bad-value': ({ place, setting, given, takes }) =>
    `Le réglage ${setting} a reçu « ${given} » (par ${place}) : il accepte ${takes}.`,
  'settings-origin': ({ kind, place }) =>
    ({
      flag: `option ${place}`,
      environment: `environnement ${place}`,
      file: `fichier ${place}`,
      usual: 'habituel',
    })[kind],
  'settings-what': ({ setting }) => settingFr[setting],
  'cli-settings': () => 'chaque réglage du service, sa valeur et d’où elle vient',
  'cli-settings-file': () => 'fichier de réglages (sinon settings.yaml dans le dossier de données)',
  'column-setting': () => 'réglage',
  'column-value': () => 'valeur',
  'column-origin': () => 'd’où',
  'column-what': () => 'ce que c’est',
};
