import type { FieldWords } from '../../field/face-words.js';
import { whole } from '../format.js';

const kinds: Readonly<Record<string, string>> = {
  visit: 'Une visite',
  plant: 'Des œufs dans un incubateur',
  find: 'Comment retrouver un incubateur',
  strip: 'Un lot : compter et féconder',
  adult: 'Un géniteur',
  cross: 'Un croisement',
};

export const field: { [Code in keyof FieldWords]: (figures: FieldWords[Code]) => string } = {
  'field-unknown-kind': ({ kind }) =>
    `Ce programme ne connaît pas les inscriptions du genre « ${kind} » : elle vient peut-être d’une version plus récente. Elle est gardée telle quelle.`,
  'field-unknown-field': ({ field }) =>
    `Elle dit quelque chose sous « ${field} », que ce genre d’inscription ne demande pas.`,
  'field-missing': ({ field }) => `Il manque « ${field} ».`,
  'field-not-plain': ({ field }) => `Ce qui se trouve sous « ${field} » n’a pas la forme voulue.`,
  'field-future': ({ when }) => `${when} n’est pas encore arrivé : corrigez la date ou attendez.`,
  'field-box-elsewhere': ({ box, site, given }) =>
    `L’incubateur « ${box} » se trouve au site « ${site} », et ceci dit « ${given} » : un incubateur n’est qu’à un endroit. Corrigez l’incubateur ou le site.`,
  'field-already-planted': ({ box, lot }) =>
    `L’incubateur « ${box} » (ou cette partie) est déjà garni du lot « ${lot} ». Si deux personnes ont inscrit la même chose, laissez celle-ci; si c’est une autre partie, nommez-la.`,
  'field-already-there': ({ id }) =>
    `Il y a déjà un « ${id} » : donnez à celui-ci un autre identifiant, ou laissez-le si c’est le même.`,
  'field-box-unknown': ({ box }) =>
    `Il n’y a pas encore d’incubateur « ${box} » : il viendra peut-être avec les inscriptions d’un autre téléphone.`,
  'field-not-lying': ({ logger }) =>
    `On ne sait pas que l’enregistreur « ${logger} » se trouve quelque part : dites d’abord où il a été mis à l’eau.`,
  'field-no-station': ({ site }) =>
    `On ne dit pas à quelle station « ${site} » a été mis à l’eau, et son site n’en a pas.`,
  'field-not-a-batch': ({ places }) =>
    `Ceci n’est pas un envoi d’inscriptions : ${places.join(', ')} ne ${places.length === 1 ? 'convient' : 'conviennent'} pas. Rien n’en a été pris.`,
  'field-no-such-entry': ({ id }) => `Il n’y a pas d’inscription « ${id} ».`,
  'field-settled': ({ id }) => `L’inscription « ${id} » n’attend plus.`,
  'field-busy': () =>
    'D’autres modifiaient sans cesse la saison : renvoyez dans un instant. Rien n’est perdu.',
  'photo-not-one': () =>
    'Ce n’est pas une photographie lisible (JPEG, PNG, WebP ou TIFF), ou elle est abîmée : reprenez-la, ou envoyez-la en JPEG.',
  'photo-too-large': ({ megapixels, most }) =>
    `La photographie compte ${whole('fr', megapixels)} mégapixels; le maximum est de ${whole('fr', most)}. Envoyez-en une plus petite.`,
  'photo-too-heavy': ({ megabytes }) =>
    `La photographie dépasse ${megabytes} Mo : envoyez-en une plus petite.`,
  'photo-none': ({ name }) => `Il n’y a pas de photographie « ${name} ».`,
  'page-field-title': () => 'Sur le terrain',
  'page-entries-title': () => 'Inscriptions du terrain',
  'page-entries-answer': ({ waiting, taken }) =>
    waiting === 0
      ? taken === 0
        ? 'Aucune inscription n’est encore arrivée.'
        : `Toutes les inscriptions (${whole('fr', taken)}) font partie de la saison.`
      : `${whole('fr', waiting)} ${waiting === 1 ? 'inscription vous attend' : 'inscriptions vous attendent'}; ${whole('fr', taken)} ${taken > 1 ? 'font' : 'fait'} partie de la saison.`,
  'page-entries-waiting': () => 'En attente',
  'page-entries-taken': () => 'Dans la saison',
  'page-entries-none': () => 'Aucune.',
  'page-entries-by': ({ who, phone, entered }) =>
    `${entered}${who === '' ? '' : `, par ${who}`}${phone === '' ? '' : ` (téléphone ${phone})`}`,
  'page-entries-clock': ({ fast }) =>
    `L’horloge du téléphone ${fast > 0 ? 'avançait' : 'retardait'} de ${whole('fr', Math.abs(fast))} s; l’heure a été corrigée.`,
  'page-entries-take': () => 'La prendre',
  'page-entries-leave': () => 'La laisser de côté',
  'page-entries-left': () => 'Laissées de côté',
  'page-entries-ready': () => 'Elle peut être prise maintenant.',
  'page-entries-kind': ({ kind }) => kinds[kind] ?? kind,
  'cli-field': () => 'Inscriptions du terrain : envoyer, énumérer, régler; photographies',
  'cli-field-send': () => 'Envoyer un fichier d’inscriptions (JSON, comme l’API le prend)',
  'cli-field-list': () => 'Inscriptions en attente, et pourquoi',
  'cli-field-settle': () => 'Prendre une inscription en attente, ou la laisser de côté',
  'cli-field-photo': () => 'Garder une photographie : son nom est ce que le fichier de saison indique',
  'cli-field-file': () => 'le fichier',
  'cli-field-id': () => 'l’identifiant de l’inscription',
  'cli-field-leave': () => 'la laisser de côté; ce qui a été écrit reste gardé',
  'cli-field-position': () => 'garder la position notée par l’appareil',
  'cli-field-received': ({ taken, waiting, before }) =>
    `Prises : ${whole('fr', taken)}. En attente : ${whole('fr', waiting)}. Déjà là : ${whole('fr', before)}.`,
  'cli-field-line': ({ id, state, what }) => `  - ${id} : ${state}${what === '' ? '' : ` (${what})`}`,
  'cli-field-none-waiting': () => 'Aucune inscription n’attend.',
  'cli-field-settled': ({ id }) => `L’inscription ${id} est réglée.`,
  'face-title': () => 'Sur le terrain',
  'face-insecure': () =>
    'Cette page n’est pas ouverte par une connexion sécurisée (https). Sans réseau, vous ne pourrez pas la rouvrir et ce que vous inscrivez pourrait se perdre : écrivez aussi sur papier, ou ouvrez-la à son adresse https.',
  'face-no-store': () =>
    'Ce navigateur ne garde rien sur le téléphone (fenêtre privée?). Ce que vous inscrivez se perdrait : ouvrez la page dans une fenêtre normale, ou écrivez sur papier.',
  'face-store-full': () =>
    'Le téléphone n’a plus de place : cette inscription n’a PAS été gardée. Elle est encore à l’écran. Libérez de l’espace (une photo de moins) et appuyez de nouveau sur Garder, ou écrivez-la sur papier.',
  'face-offline': () => 'Pas de réseau. Les inscriptions restent sur ce téléphone.',
  'face-online': () => 'Réseau',
  'face-prepare': () => 'Préparer la journée',
  'face-prepared': () => 'Préparé',
  'face-prepare-first': () =>
    'Avant de partir, touchez ici pendant que vous avez du réseau : les sites, les incubateurs et les lots seront alors sur le téléphone.',
  'face-prepare-failed': () =>
    'La préparation a échoué : le service ne répond pas. Ce qui était préparé reste là.',
  'face-unsent': () => 'pas encore envoyées',
  'face-all-sent': () => 'Tout est envoyé',
  'face-send-now': () => 'Envoyer maintenant',
  'face-sending': () => 'Envoi…',
  'face-not-sent-why': () => 'Non envoyé : le service ne répond pas. On réessaiera.',
  'face-signed-out': () =>
    'Le service vous demande de vous reconnecter : rien n’est perdu. Connectez-vous, puis envoyez.',
  'face-kept': () => 'Gardé sur ce téléphone',
  'face-sent': () => 'envoyée',
  'face-waiting': () => 'envoyée, attend la personne responsable',
  'face-list': () => 'Ce qui a été inscrit',
  'face-back': () => 'Retour',
  'face-keep': () => 'Garder',
  'face-new': () => 'Inscrire',
  'face-kind-visit': () => 'Une visite',
  'face-kind-plant': () => 'Des œufs dans un incubateur',
  'face-kind-find': () => 'Comment retrouver un incubateur',
  'face-kind-strip': () => 'Un lot : compter et féconder',
  'face-kind-adult': () => 'Un géniteur',
  'face-kind-cross': () => 'Un croisement',
  'face-who-am-i': () => 'Votre nom',
  'face-site': () => 'Site',
  'face-box': () => 'Incubateur',
  'face-lot': () => 'Lot',
  'face-eggs': () => 'Œufs',
  'face-part': () => 'Partie de l’incubateur',
  'face-unfilled': () => 'Compartiments vides',
  'face-doubled': () => 'Compartiments à deux œufs',
  'face-transportC': () => 'Eau de transport (°C)',
  'face-siteC': () => 'Eau du site (°C)',
  'face-temperedMinutes': () => 'Minutes d’acclimatation',
  'face-must-not-handle': () =>
    'Ces œufs sont dans la période où une manipulation les tue : ne les déplacez pas. Consultez la personne biologiste responsable.',
  'face-handle-soon': () =>
    'D’ici un jour, ces œufs entrent dans la période où une manipulation les tue : mettez-les en place avant, ou laissez-les tranquilles jusqu’au stade œillé.',
  'face-cold-start': () =>
    'Le site est plus froid que ce qui est conseillé juste après la fécondation : plus d’œufs peuvent se perdre. Consultez la personne biologiste responsable.',
  'face-temper-now': () =>
    'Plus de 2 °C d’écart : amenez lentement les œufs à la température du site avant de les y mettre.',
  'face-find': () => 'Où il se trouve',
  'face-bankMark': () => 'Repère sur la rive',
  'face-tiedTo': () => 'Attaché à',
  'face-position': () => 'Prendre la position du téléphone',
  'face-position-failed': () => 'Le téléphone n’a pas donné de position.',
  'face-photo': () => 'Photographie',
  'face-photo-position': () => 'Garder la position de la photographie',
  'face-photo-refused': () => 'La photographie n’a pas pu être reçue; l’inscription est partie sans elle :',
  'face-celsius': () => 'Thermomètre à main (°C)',
  'face-ice': () => 'Glace',
  'face-ice-none': () => 'Eau libre',
  'face-ice-on': () => 'Vient de prendre',
  'face-ice-under': () => 'Sous la glace',
  'face-ice-out': () => 'Vient de partir',
  'face-levelM': () => 'Niveau (m)',
  'face-hours': () => 'Heures',
  'face-who': () => 'Qui était là',
  'face-logger': () => 'Enregistreur',
  'face-logger-add': () => 'Ajouter un enregistreur',
  'face-did': () => 'Ce qui a été fait',
  'face-did-in': () => 'Mis à l’eau',
  'face-did-out': () => 'Retiré',
  'face-did-read': () => 'Relevé, laissé en place',
  'face-did-checked': () => 'Vérifié',
  'face-fast': () => 'Son horloge par rapport au téléphone (secondes d’avance, − si retard)',
  'face-iceBath': () => 'Dans la glace fondante, il indique (°C)',
  'face-putBack': () => 'Vérifié et remis en place',
  'face-yes': () => 'Oui',
  'face-no': () => 'Non',
  'face-note': () => 'Remarque',
  'face-when': () => 'Quand',
  'face-when-now': () => 'Laisser vide pour maintenant',
  'face-table': () => 'Table de développement',
  'face-counted': () => 'Compté par',
  'face-counted-displacement': () => 'Eau déplacée (mL)',
  'face-counted-weight': () => 'Poids (g)',
  'face-sample-add': () => 'Ajouter un échantillon compté',
  'face-sample-eggs': () => 'Œufs de l’échantillon',
  'face-sample-amount': () => 'mL ou g de l’échantillon',
  'face-total': () => 'mL ou g du lot entier',
  'face-count-comes-to': () => 'Les échantillons donnent',
  'face-disinfectedWith': () => 'Désinfecté avec',
  'face-disinfectedMinutes': () => 'Minutes de désinfection',
  'face-controlEggs': () => 'Œufs gardés comme témoins',
  'face-parents': () => 'Géniteurs',
  'face-id': () => 'Identifiant',
  'face-sex': () => 'Sexe',
  'face-female': () => 'Femelle',
  'face-male': () => 'Mâle',
  'face-males': () => 'Mâles',
  'face-origin': () => 'Origine',
  'face-wild': () => 'Sauvage',
  'face-hatchery': () => 'Pisciculture',
  'face-lengthCm': () => 'Longueur (cm)',
  'face-sample': () => 'Numéro d’échantillon',
  'face-fate': () => 'Ensuite',
  'face-released': () => 'Remis à l’eau',
  'face-kept-fate': () => 'Gardé',
  'face-died': () => 'Mort',
  'face-other': () => 'Un autre…',
  'face-must': () => 'Veuillez remplir ceci.',
  'face-not-number': () => 'Ce n’est pas un nombre.',
  'face-grouped': () => 'Ceci se lit de deux façons. Écrivez-le sans séparateur, par exemple 13000.',
  'face-whole-only': () => 'Un nombre entier, s’il vous plaît.',
  'face-eggs-left': () => 'œufs de ce lot pas encore en incubateur',
  'face-caution': () =>
    'Ne traversez jamais la glace ni une crue pour une inscription. Les permis, les règles de santé des poissons, le biologiste responsable et l’autorité locale décident.',
  'face-desk': () => 'Vers la saison',
};
