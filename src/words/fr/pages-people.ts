import type { PeoplePageWords } from '../../pages/people-words.js';
import { longDay, whole } from '../format.js';
import { byWhom } from '../somebody.js';
import { de } from './elision.js';

const day = (at: number) => longDay('fr', at);
const n = (count: number) => whole('fr', count);

const did: Readonly<Record<string, string>> = {
  'signed-in': 'ouverture de session',
  'sign-in-refused': 'ouverture de session refusée',
  'session-ended': 'fermeture de session',
  'sessions-ended': 'sessions d’une personne fermées',
  'account-made': 'compte créé',
  'account-removed': 'compte supprimé',
  'password-set': 'mot de passe changé',
  'role-set': 'rôle changé',
  'token-made': 'jeton d’API créé',
  'token-ended': 'jeton d’API annulé',
  invited: 'invitation créée',
  'invitation-ended': 'invitation annulée',
  'calendar-changed': 'adresse du calendrier changée',
};

const errors: Readonly<Record<number, string>> = {
  403: 'Non permis',
  404: 'Introuvable',
  408: 'Trop lent',
  409: 'Autre chose est en vigueur',
  412: 'Autre chose est en vigueur',
  413: 'Trop gros',
  429: 'Attendez un peu',
  500: 'Un problème est survenu ici',
  503: 'Impossible pour le moment',
  507: 'Le disque est plein',
};

const roleFr: Readonly<Record<string, string>> = {
  coordinator: 'coordination',
  crew: 'équipe',
  reader: 'lecture',
};

/** Accounts, tokens, what happened, the calendar and errors, in French (fr-CA). */
export const pagesPeople: { [Code in keyof PeoplePageWords]: (words: PeoplePageWords[Code]) => string } = {
  'page-people-title': () => 'Comptes',
  'page-people-answer': ({ accounts, coordinators, invitations }) =>
    `${accounts === 1 ? 'Une personne a' : `${n(accounts)} personnes ont`} un compte, dont ${coordinators === 1 ? 'une' : n(coordinators)} à la coordination; ${invitations === 0 ? 'aucune invitation en attente' : invitations === 1 ? 'une invitation en attente' : `${n(invitations)} invitations en attente`}.`,
  'page-people-nobody': () =>
    'Personne n’a de compte : quiconque utilise cet ordinateur peut tout modifier. Le premier compte doit être à la coordination; ensuite, chacun ouvre une session.',
  'page-people-link': () => 'Comptes',
  'page-people-role': () => 'Rôle',
  'page-people-since': () => 'depuis le',
  'page-people-change': () => 'Modifier',
  'page-people-set-role': ({ name }) => `Changer le rôle ${de(name)}`,
  'page-people-set-password': ({ name }) =>
    `Changer le mot de passe ${de(name)} et fermer toutes ses sessions`,
  'page-people-remove': ({ name }) => `Supprimer le compte ${name}`,
  'page-people-end-sessions': ({ name, sessions }) =>
    `Fermer toutes les sessions ${de(name)} (${n(sessions)})`,
  'page-people-add': () => 'Créer un compte',
  'page-people-add-do': () => 'Créer',
  'page-people-first': () => 'Créer le premier compte',
  'page-people-invite': () => 'Inviter quelqu’un',
  'page-people-invite-what': () =>
    'Un lien avec lequel une personne crée son propre compte, une seule fois, dans les 14 jours. Ne l’envoyez qu’à cette personne.',
  'page-people-invite-do': () => 'Créer un lien',
  'page-people-invite-made': ({ role, ends }) =>
    `L’invitation (${roleFr[role] ?? role}) est valable jusqu’au ${day(ends)}. Son lien ne s’affiche que cette fois :`,
  'page-people-invite-standing': ({ role, by, made, ends }) =>
    `${roleFr[role] ?? role}, créée par ${byWhom('fr', by)} le ${day(made)}, valable jusqu’au ${day(ends)}`,
  'page-people-end': () => 'Annuler',
  'page-people-may': ({ role }) =>
    ({
      coordinator: 'coordination : tout',
      crew: 'équipe : charger des relevés, ajouter observations et décomptes, prendre acte',
      reader: 'lecture : consulter seulement',
    })[role],
  'page-tokens-title': () => 'Jetons d’API',
  'page-tokens-answer': ({ tokens, over }) =>
    tokens === 0
      ? 'Aucun programme n’a de jeton.'
      : `${tokens === 1 ? 'Un jeton d’API existe' : `${n(tokens)} jetons d’API existent`}${over === 0 ? '' : `, dont ${n(over)} ${over === 1 ? 'expiré' : 'expirés'}`}.`,
  'page-tokens-what': () =>
    'Un programme qui lit ou charge présente son jeton à chaque demande. Donnez-lui le moindre rôle qui suffit, et une fin.',
  'page-tokens-add': () => 'Créer un jeton',
  'page-tokens-for': () => 'À quoi il sert',
  'page-tokens-ends': () => 'Dernier jour',
  'page-tokens-do': () => 'Créer le jeton',
  'page-tokens-made': ({ name }) =>
    `Le jeton « ${name} » ne s’affiche que cette fois; gardez-le comme un mot de passe :`,
  'page-tokens-over': () => 'expiré',
  'page-tokens-by': () => 'Créé par',
  'page-audit-title': () => 'Journal',
  'page-audit-answer': ({ shown }) =>
    `Les ${n(shown)} dernières inscriptions : qui a ouvert une session, qui a été refusé, qui a modifié des comptes.`,
  'page-audit-none': () => 'Rien ne s’est encore passé.',
  'page-audit-when': () => 'Quand',
  'page-audit-who': () => 'Qui',
  'page-audit-what': () => 'Quoi',
  'page-audit-did': ({ did: code }) => did[code] ?? code,
  'page-audit-more': () => 'Montrer les inscriptions plus anciennes',
  'page-copy': () => 'Copier',
  'page-copied': () => 'Copié',
  'page-calendars-title': () => 'Le calendrier',
  'page-calendars-link': () => 'Calendrier',
  'page-calendars-answer': ({ box }) =>
    `Les fenêtres de ${box === null ? 'tous les incubateurs' : `l’incubateur ${box}`} et les relevés à faire, dans votre propre calendrier; une fenêtre qui se déplace s’y déplace aussi.`,
  'page-calendars-box': () => 'Incubateur',
  'page-calendars-every-box': () => 'tous les incubateurs',
  'page-calendars-language': () => 'Langue',
  'page-calendars-choose': () => 'Montrer l’adresse',
  'page-calendars-address': () => 'Adresse d’abonnement',
  'page-calendars-who': () =>
    'Quiconque connaît l’adresse peut lire ce calendrier, sans ouvrir de session. Si elle est tombée en de mauvaises mains, changez-la.',
  'page-calendars-here-only': () =>
    'Ce service ne répond que sur cet ordinateur : le calendrier de cet ordinateur peut s’y abonner. Pour les téléphones, prenez le fichier, ou installez le service sur un petit serveur avec HTTPS.',
  'page-calendars-file': () => 'Le calendrier en fichier, tel qu’il est aujourd’hui',
  'page-calendars-change': () => 'Changer l’adresse',
  'page-calendars-change-what': () =>
    'L’ancienne adresse ne vaut plus rien aussitôt : il faut donner la nouvelle à tous les abonnés.',
  'page-calendars-change-do': () => 'La changer',
  'page-calendars-changed': () => 'L’adresse a été changée; voici celle qui vaut maintenant.',
  'page-error-title': ({ status }) => errors[status] ?? 'Cela n’a pas pu se faire',
  'page-error-back': () => 'Revenir',
  'page-error-other-account': () => 'Votre compte',
};
