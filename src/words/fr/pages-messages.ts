import type { MessagesPageWords } from '../../messages/words.js';
import { longDay, whole } from '../format.js';
import { byWhom, whoFirst } from '../somebody.js';

const n = (count: number) => whole('fr', count);
const weekdays = ['lundi', 'mardi', 'mercredi', 'jeudi', 'vendredi', 'samedi', 'dimanche'];
const subjects = {
  spells: 'les épisodes nuisibles aux œufs',
  windows: 'les fenêtres qui se déplacent',
  stages: 'les stades probablement atteints',
  lifting: 'l’approche de la fenêtre de levée',
  silence: 'les stations et sources qui se taisent',
};
const ways: Readonly<Record<string, string>> = {
  email: 'courriel',
  webhook: 'webhook',
  mailbox: 'boîte de la démonstration',
  none: 'aucune',
};
const states: Readonly<Record<string, string>> = {
  sending: 'en cours d’envoi',
  delivered: 'remis',
  failed: 'refusé pour de bon',
  'given-up': 'abandonné',
  'no-address': 'sans adresse',
  unsubscribed: 'désabonné',
};
const feedStates: Readonly<Record<string, string>> = {
  never: 'pas encore interrogée',
  fresh: 'a apporté du nouveau',
  unchanged: 'rien de nouveau',
  refused: 'n’est pas un relevé',
  failing: 'en échec : réessayée avec des pauses croissantes',
};

/** La page des messages et des sources. */
export const pagesMessages: {
  [Code in keyof MessagesPageWords]: (words: MessagesPageWords[Code]) => string;
} = {
  'page-nav-messages': () => 'Messages',
  'page-messages-title': () => 'Messages',
  'page-messages-answer': ({ people, waiting, failed }) =>
    [
      people < 2
        ? `${n(people)} personne est prévenue quand quelque chose arrive.`
        : `${n(people)} personnes sont prévenues quand quelque chose arrive.`,
      waiting === 0 ? 'Rien n’attend d’être envoyé.' : `Encore à envoyer : ${n(waiting)}.`,
      ...(failed === 0 ? [] : [`Non arrivés : ${n(failed)}.`]),
    ].join(' '),
  'page-messages-nobody': () => 'Personne n’est encore prévenu de rien : inscrivez qui doit l’être.',
  'page-messages-no-server': () =>
    'Aucun serveur de courriel n’est nommé dans les réglages (smtpHost, smtpFrom) : le courriel attend qu’il y en ait un. Les webhooks partent.',
  'page-messages-people': () => 'Qui est prévenu',
  'page-messages-add': () => 'Ajouter une personne',
  'page-messages-change': ({ name }) => `Modifier ${name}`,
  'page-messages-save': () => 'Enregistrer',
  'page-messages-remove': () => 'Retirer',
  'page-messages-test': () => 'Envoyer un message d’essai',
  'page-messages-name': () => 'Nom',
  'page-messages-language': () => 'Langue',
  'page-messages-email': () => 'Courriel',
  'page-messages-webhook': () => 'Adresse du webhook',
  'page-messages-webhook-what': () =>
    'Pour les programmes : chaque message y est envoyé en JSON, signé (Underice-Signature, HMAC-SHA256 sur l’horodatage, un point et le corps).',
  'page-messages-secret': () => 'Secret du webhook',
  'page-messages-weekly': () => 'Résumé hebdomadaire',
  'page-messages-weekday': ({ weekday }) => weekdays[weekday - 1] ?? '',
  'page-messages-never': () => 'aucun',
  'page-messages-quiet': () => 'Heures calmes',
  'page-messages-quiet-what': () =>
    'Ce qui peut attendre attend leur fin. Un épisode létal mesuré n’attend pas.',
  'page-messages-quiet-from': () => 'Calme de',
  'page-messages-quiet-to': () => 'Calme à',
  'page-messages-subjects': () => 'Prévenu de',
  'page-messages-subject': ({ subject }) => subjects[subject],
  'page-messages-unsubscribed': ({ day }) =>
    `Désabonnement le ${longDay('fr', day)} : rien ne part. Enregistrer abonne de nouveau.`,
  'page-messages-list': () => 'Envois',
  'page-messages-none': () => 'Aucun message n’a encore été écrit.',
  'page-messages-when': () => 'Écrit',
  'page-messages-who': () => 'À',
  'page-messages-what': () => 'Message',
  'page-messages-way': () => 'Par',
  'page-messages-state': () => 'État',
  'page-messages-last': () => 'Dernière réponse',
  'page-messages-way-name': ({ channel }) => ways[channel] ?? channel,
  'page-messages-state-name': ({ state, tries, next }) =>
    state === 'waiting'
      ? tries === 0
        ? 'attend'
        : `essayé ${n(tries)} fois, de nouveau ${next}`
      : (states[state] ?? state),
  'page-messages-seen': ({ by }) => `Vu par ${byWhom('fr', by)}`,
  'page-messages-gone': () => 'retiré',
  'page-feeds-title': () => 'Sources',
  'page-feeds-none': () =>
    'Aucune source n’est indiquée. Sous feeds dans settings.yaml : un dossier à surveiller ou une adresse à interroger, avec une station.',
  'page-feeds-what': () => 'Source',
  'page-feeds-from': () => 'D’où',
  'page-feeds-fresh': () => 'Dernière nouvelle lecture arrivée',
  'page-feeds-tried': () => 'Dernière demande',
  'page-feeds-next': () => 'Prochaine',
  'page-feeds-state': ({ state }) => feedStates[state] ?? state,
  'page-feeds-push': () =>
    'Les stations peuvent aussi envoyer leurs lectures : POST /api/v1/readings avec un jeton d’API de l’équipe.',
  'page-mailbox-title': () => 'Boîte aux lettres de la démonstration',
  'page-mailbox-what': () =>
    'Rien d’ici n’a quitté cet ordinateur : les personnes et les adresses sont inventées. Chaque message est montré tel qu’il arriverait.',
  'page-mailbox-none': () => 'Rien n’est encore arrivé : revenez dans quelques secondes.',
  'page-mailbox-link': () => 'Lire les messages dans la boîte aux lettres de la démonstration',
  'page-mailbox-from': () => 'De',
  'page-mailbox-to': () => 'À',
  'page-mailbox-subject': () => 'Objet',
  'page-mailbox-plain': () => 'En texte brut',
  'page-mailbox-html': () => 'L’ouvrir comme un logiciel de courriel le montre',
  'page-letter-title': () => 'Un message',
  'page-letter-seen-do': () => 'J’en ai pris connaissance',
  'page-letter-seen': ({ by }) => `${whoFirst('fr', by)} a pris connaissance de ce message.`,
  'page-unsubscribe-title': () => 'Se désabonner',
  'page-unsubscribe-ask': ({ name }) =>
    `${name} : plus aucun message de ce groupe ne vous sera envoyé, pas même pour un épisode létal.`,
  'page-unsubscribe-do': () => 'Se désabonner',
  'page-unsubscribe-done': () => 'Le désabonnement est fait. Votre coordination peut vous réinscrire.',
  'page-unsubscribe-unknown': () =>
    'Ce lien n’est pas connu, ou la personne a été retirée : rien ne lui est envoyé.',
};
