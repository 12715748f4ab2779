import type { LeadingPageWords } from '../../pages/leading-words.js';
import { percent, significant } from '../format.js';
import { whoFirst } from '../somebody.js';

const one = (value: number) => significant('fr', value);
const invited = {
  coordinator: 'coordonner le groupe',
  crew: 'faire partie de l’équipe',
  reader: 'consulter les pages',
} as const;

/** The first visit, help and sign-in in French (fr-CA). */
export const pagesLeading: { [Code in keyof LeadingPageWords]: (words: LeadingPageWords[Code]) => string } = {
  'page-first-title': () => 'Une première visite',
  'page-first-answer': () =>
    'Il n’y a encore rien ici. En une séance, vous pouvez définir une station, un lot et un incubateur, charger un relevé et voir une fenêtre.',
  'page-first-answer-begun': ({ done, of }) =>
    `${done < 2 ? `${done} étape sur ${of} est faite` : `${done} étapes sur ${of} sont faites`} ; la suivante est plus bas.`,
  'page-first-answer-done': () => 'Tout est en place : la page de la saison montre les fenêtres.',
  'page-first-sample': () => 'Regarder la saison d’exemple',
  'page-first-sample-what': () =>
    'Une rivière inventée, avec six incubateurs et un hiver de relevés. Elle remplit ce dossier : prenez-en un autre pour votre propre saison.',
  'page-first-sample-do': () => 'Charger la saison d’exemple',
  'page-first-own': () => 'Commencer la vôtre',
  'page-first-own-what': () =>
    'Le moins qu’il faut pour commencer. Tout peut être changé plus tard, et complété : d’autres stations, lots, incubateurs, enregistreurs.',
  'page-first-group': () => 'Votre groupe',
  'page-first-group-name': () => 'nom du groupe',
  'page-first-zone': () => 'fuseau horaire, comme America/Halifax',
  'page-first-station': () => 'Où l’eau est lue',
  'page-first-station-what': () =>
    'L’endroit d’un enregistreur à côté de l’incubateur, ou du plus proche qu’il y ait.',
  'page-first-lot': () => 'Les œufs',
  'page-first-box': () => 'L’incubateur',
  'page-first-curve': () => 'L’eau habituelle, si aucun hiver passé n’a été relevé',
  'page-first-curve-what': () =>
    'Les jours à venir sont calculés d’après des hivers passés, de cette station ou d’une voisine, que vous pourrez charger ensuite. Sans eux, aucune fenêtre ne vient tant que ceci n’est pas indiqué ; elle est alors plus large.',
  'page-first-curve-monthly': () =>
    '°C au 15 de chaque mois, de janvier à décembre : douze nombres séparés par des espaces, comme 0 0 0 0,8 8 15 19 19 15,5 10 4 0,3',
  'page-first-curve-do': () => 'L’indiquer',
  'page-first-do': () => 'Mettre en place',
  'page-first-step-season': () => 'Une station, un lot et un incubateur',
  'page-first-step-download': () => 'Le premier relevé',
  'page-first-step-download-what': () =>
    'Un fichier sorti de l’enregistreur, tel quel. Vous voyez ce qui a été compris avant que rien ne soit conservé.',
  'page-first-step-past': () => 'Des hivers passés, ou une courbe',
  'page-first-step-past-what': () =>
    'Les jours à venir sont calculés d’après des hivers passés. Chargez ceux de cette station, ou ceux d’une voisine avec ses lectures de cet automne, qui apprennent comment l’une suit l’autre. S’il n’y en a pas, indiquez l’eau habituelle.',
  'page-first-step-window': () => 'Une fenêtre',
  'page-first-step-window-what': () => 'Quand les œufs arrivent à chaque stade, et avec quelle certitude.',
  'page-first-go': () => 'Continuer',
  'page-first-where': () => 'Où cela fonctionne',
  'page-first-where-laptop': () =>
    'Sur un seul portable, sans aucun réseau : ces pages, les feuilles imprimées, et le calendrier en fichier.',
  'page-first-where-server': () =>
    'Pour des téléphones sur la berge et des calendriers qui se renouvellent : un petit serveur en HTTPS, car les navigateurs ne gardent des entrées hors ligne que sur une connexion sûre. Le README en donne un exemple.',
  'page-help-title': () => 'Aide',
  'page-help-answer': () =>
    'Ce que les mots veulent dire, d’où viennent les nombres, et ce qu’aucun nombre ici ne peut décider.',
  'page-help-words': () => 'Les mots, dans les deux langues',
  'page-help-words-note': () =>
    'La colonne française est celle du projet, tant qu’une personne biologiste francophone ne l’a pas relue. Attention à « alevin » : en français, c’est souvent le poisson qui nage déjà ; l’anglais alevin est donc ici l’alevin vésiculé.',
  'page-help-word-en': () => 'anglais',
  'page-help-word-fr': () => 'français',
  'page-help-word-meaning': () => 'sens',
  'page-help-numbers': () => 'D’où viennent les nombres',
  'page-help-numbers-answer': () =>
    'Chaque jour ajoute ce qu’un œuf gagne en un jour dans l’eau de ce jour ; un stade vient quand la somme est pleine.',
  'page-help-window': () => 'Les fenêtres',
  'page-help-window-text': () =>
    'Pour chaque lot et chaque stade : le jour où les premiers œufs (5 %) y arrivent, celui de l’œuf médian et celui des derniers (95 %). Chacun a un intervalle censé tenir 8 fois sur 10. Il contient ce qu’on ne sait pas : les jours à venir, les jours comblés, l’erreur que l’enregistreur garde tout l’hiver, la différence entre le gravier et le cours d’eau, la dispersion entre œufs et entre lots, et celle de la table. Les mêmes données donnent toujours les mêmes dates.',
  'page-help-progress': () => 'Avancement et degrés-jours',
  'page-help-progress-text': () =>
    'L’avancement est la fraction du chemin vers un stade. Chaque jour ajoute 1/D, où D est le nombre de jours que demande le stade à la température constante de ce jour, selon la table de développement du lot. La moitié des œufs y sont quand il atteint 1. Il est additionné jour par jour, jamais tiré de la moyenne d’une saison. Les degrés-jours se comptent au-dessus de la base de la table.',
  'page-help-old-rule': () => 'L’ancienne règle',
  'page-help-old-rule-text': () =>
    'Un nombre fixe de degrés-jours de la fécondation à l’éclosion, tel que le groupe l’emploie. Près de 0 °C, les œufs se développent encore alors que les degrés-jours ne bougent plus : en rivière froide, la règle arrive donc trop tard. À côté de chaque fenêtre se trouve ce qu’elle aurait dit, et pourquoi elle diffère.',
  'page-help-filled': () => 'Les jours comblés',
  'page-help-filled-text': () =>
    'Un jour est mesuré quand des lectures en couvrent au moins les trois quarts, sans trou de plus de six heures. Les autres sont comblés d’après des stations voisines : leur relation avec celle-ci est établie sur les jours mesurés aux deux, saison par saison, et jugée sur des jours qu’elle n’avait pas vus. Ce que la relation manque aux bouts de la lacune s’y efface peu à peu. Un relevé qui n’est pas encore venu est une longue lacune.',
  'page-help-projected': () => 'Les jours projetés',
  'page-help-projected-text': () =>
    'Les jours à venir sont tirés d’hivers passés de la station, ou de voisines, l’écart d’aujourd’hui à la normale s’effaçant comme il l’a fait par le passé. Sans hiver passé, c’est la courbe saisonnière indiquée qui parle, et la prévision le dit.',
  'page-help-record': () => 'Les lectures d’une station',
  'page-help-record-text': () =>
    'Tous les chargements en place se lisent ensemble : là où ils se recouvrent, le plus récent paraît, et un chargement retiré laisse voir de nouveau ce qu’il couvrait. Une longue étendue est dessinée d’après la plus basse lecture, la moyenne et la plus haute de chaque pas de l’écran, chaque pas compté à partir des lectures mêmes; de plus près, chaque lecture est là. La moyenne d’un jour est pondérée par le temps sur le jour en heure normale de la station : aucun jour n’a 23 ou 25 heures. Le nombre de lectures, la première et la dernière sont ceux des chargements tels que les fichiers les donnent.',
  'page-help-understood': () => 'Comment un relevé est compris',
  'page-help-understood-text': () =>
    'Le codage, le séparateur, la marque décimale, les en-têtes, les colonnes, l’unité, l’ordre des dates et le décalage de l’horloge sont tirés de ce que dit le fichier, de son rythme et de son sens dans le temps. Ce qu’il a fallu supposer est énuméré, et là où deux lectures sont aussi probables l’une que l’autre, on vous le demande : rien n’est deviné. Une ligne inutilisable est comptée, et les premières sont montrées avec la raison. Une disposition que le groupe conserve passe avant ce que le fichier semble dire. Si un fichier a déplacé une fenêtre, on le voit à la prévision d’avant et d’après; là où il recouvre ce qui est déjà là, la plus grande différence figure à côté du nombre.',
  'page-help-tables': () => 'Les tables de développement',
  'page-help-tables-text': () =>
    'Une ligne dit combien de jours demande un stade à température constante : par une loi (une puissance de la température, ou des degrés-jours au-dessus d’une base), par des jours à des températures énumérées (entre deux d’entre elles, le logarithme des jours suit une droite), ou en multiple d’un autre stade. La courbe du graphique est cette ligne calculée à chaque demi-degré. Elle est en pointillé hors des températures que couvre sa source. La dispersion entre œufs est l’écart type de l’avancement dans un même lot. Chaque nombre porte sa source, et une marque s’il n’a été vu que dans un résumé, s’il est noté de mémoire, s’il relève de la pratique courante ou d’une estimation de ce projet. Ce que vos propres lots ont montré est mis à côté de la ligne publiée, resserré d’autant plus que peu de lots parlent.',
  'page-help-checks': () => 'Les contrôles des lectures',
  'page-help-checks-text': () =>
    'Les lectures sont gardées telles que le fichier les donne. Les marques suivent le manuel QARTOD pour la température de l’eau : 1 passe, 2 non évaluée, 3 douteuse, 4 rejetée, 9 manquante. Les corrections d’horloge et de bain de glace et les coupes s’appliquent à la lecture ; rien n’est réécrit, et un chargement retiré laisse voir de nouveau ce qu’il couvrait.',
  'page-help-lifting': () => 'Le jour de la levée',
  'page-help-lifting-text': () =>
    'Les mêmes hivers possibles qui donnent les fenêtres sont suivis pour chaque incubateur : à chaque jour envisagé, la part de ses poissons qui seraient encore dans l’incubateur comme alevins vésiculés et la part qui seraient sortis du gravier. La probabilité d’un jour est la part des hivers possibles où les deux restent dans les limites de la règle du groupe. Les jours recommandés gardent le plus d’incubateurs possible dans ces limites, avec l’équipe, les sorties et les jours exclus tels qu’indiqués; ce que coûte un jour plus tôt ou plus tard figure à côté.',
  'page-help-survival': () => 'La survie',
  'page-help-survival-text': () =>
    'La part d’un incubateur est celle de ses compartiments vides parmi les œufs mis en place : un maximum, car un compartiment vide contenait un œuf dont l’alevin vésiculé est parti ou qui a disparu. L’intervalle d’un seul incubateur est celui de Wilson, à 95 %. Les incubateurs d’un même site diffèrent plus que par hasard : l’intervalle de plusieurs vient donc de leurs écarts (quasi-binomial; bêta-binomial à partir de vingt), et pour très peu d’incubateurs seuls les décomptes et l’étendue sont donnés. Les groupes sont comparés deux à deux, avec une correction pour le nombre de paires (Holm); là où aucun ordre ne peut être donné, aucun ne l’est.',
  'page-help-hindcast': () => 'Ce que la prévision aurait valu',
  'page-help-hindcast-text': () =>
    'Chaque hiver passé complet de chaque station est caché à son tour et prévu comme il l’aurait été à chaque date, d’après les autres hivers seulement; à côté, la prévision qui ne connaît que les hivers d’avant. Les fenêtres sont comparées à celles du relevé achevé : l’écart moyen en jours, de quel côté, et combien de fois l’intervalle à 80 % contenait le jour. Cela mesure l’eau, non si la table de développement convient à votre souche.',
  'page-help-eggs': () => 'Compter les œufs',
  'page-help-eggs-text': () =>
    'Les œufs des échantillons comptés sur l’eau qu’ils déplacent (ou leur poids), fois ce que tout le lot déplace ou pèse. L’intervalle à 95 % vient de l’écart des échantillons à leur rapport commun, avec le t de Student; un seul échantillon ne dit pas de combien il se trompe. Où est chaque œuf : le décompte, moins ce qui est en incubateur, les témoins, les pertes et les surplus.',
  'page-help-cautions': () => 'Ce qu’aucun nombre ici ne décide',
  'page-help-cautions-text': () =>
    'Une prévision est une estimation. La température n’est pas seule à tuer des œufs : le limon, l’oxygène, la glace et l’eau acide en tuent aussi. Ne traversez jamais la glace et n’entrez jamais dans l’eau haute pour respecter une date. N’ouvrez jamais un incubateur tant que la manipulation tue ses œufs. Les permis, les règles de santé du poisson, la personne biologiste responsable et l’autorité locale décident.',
  'page-help-other-harm': () => 'Ce qui nuit encore aux œufs',
  'page-help-other-harm-text': ({ silt, oxygen, acid, wading, frozenSolid, alevinsSurvive }) =>
    `Aucune prévision ici n’en sait rien. Du limon au-dessus de ${one(silt.harms)} % dans le gravier nuit; au-dessus de ${one(silt.hardToOffset)} %, on y remédie mal (Can. J. Fish. Aquat. Sci. 61(12), 2004, résumé). Oxygène : ${one(oxygen.water)} mg/L dans l’eau, ${one(oxygen.gravel)} dans le gravier (EPA 1986, de mémoire). Un pH sous ${one(acid.eggs)} tue les œufs, sous ${one(acid.fry)} les alevins (MPO 2000/050). Marcher une seule fois sur un nid juste avant l’éclosion a tué jusqu’à ${percent('fr', wading)} des œufs (Roberts et White 1992, résumé). Des incubateurs ont gelé en bloc sous ${frozenSolid.shallowest} à ${frozenSolid.deepest} cm d’eau courante; dans ceux qu’on a retrouvés, moins de ${percent('fr', frozenSolid.survived)} ont survécu (truite brune, Laramie River 1975-76, résumé). Les alevins vésiculés du saumon atlantique survivent jusqu’à ${one(alevinsSurvive)} °C (Ojanguren et al. 1999, résumé).`,
  'page-help-elsewhere-text': ({ plates, redds }) =>
    `Ce qui survit ailleurs : dans des plaques à un œuf par case, plus de ${percent('fr', plates)} ont éclos (truite brune, N. Am. J. Fish. Manage. 12:833, résumé); des nids de trois cours d’eau du Maine, de ${percent('fr', redds.least)} à ${percent('fr', redds.most)} ont émergé, ${percent('fr', redds.mean)} en moyenne (MacKenzie et Moring 1988). Incubateurs 70-80 %, nature environ 10 % : pratique courante, sans source.`,
  'page-api-title': () => 'L’API',
  'page-api-answer': () => 'Tout ce que peuvent les pages et la ligne de commande, pour d’autres programmes.',
  'page-api-what': () =>
    'Les dates sont les dates locales du groupe, les instants sont en UTC selon ISO 8601, les températures en °C. Les phrases viennent dans la langue d’Accept-Language (en, fr). Les erreurs suivent la RFC 9457. Là où le groupe a des comptes, chaque demande présente un jeton d’API. Les routes et les formes ci-dessous sont décrites en anglais, comme dans openapi.json.',
  'page-api-routes': () => 'Les routes',
  'page-api-schemas': () => 'Formes de ce qui est envoyé et répondu',
  'page-help-api': () => 'Pour R, Python et d’autres programmes : l’API',
  'page-meaning-station': () =>
    'un endroit où quelque chose est lu : eau du cours d’eau, eau dans le gravier, air, bassin d’écloserie, station hydrométrique',
  'page-meaning-quantity': () =>
    'ce qui est lu : la température et, là où une station les a, le niveau ou le débit',
  'page-meaning-logger': () => 'l’instrument, et le temps qu’il a passé à une station',
  'page-meaning-visit': () => 'des gens à un site un jour donné, et ce qu’ils ont vu',
  'page-meaning-download': () => 'un fichier sorti d’un enregistreur',
  'page-meaning-load': () => 'un relevé accepté ; il peut être retiré',
  'page-meaning-reading': () => 'une valeur à un instant, avec sa marque de qualité',
  'page-meaning-broodstock': () => 'les adultes dont viennent les œufs et la laitance',
  'page-meaning-lot': () => 'des œufs fécondés ensemble',
  'page-meaning-site': () => 'l’endroit où se trouvent des incubateurs',
  'page-meaning-box': () => 'un incubateur à un site',
  'page-meaning-fill': () => 'les œufs d’un lot dans un incubateur ou une de ses parties',
  'page-meaning-table': () => 'ce que demande chaque stade, et d’où vient chaque nombre',
  'page-meaning-alevin': () =>
    'un poisson éclos qui porte encore son sac vitellin, dans le gravier ou dans l’incubateur',
  'page-meaning-stage': () =>
    'œuf œillé, éclosion, résorption du sac vitellin, émergence (sortie du gravier)',
  'page-meaning-units': () => 'degrés-jours au-dessus de la base de la table',
  'page-meaning-progress': () => 'fraction du chemin vers un stade',
  'page-meaning-days': () => 'une valeur par jour : mesurée, comblée ou projetée',
  'page-meaning-window': () =>
    'les jours où les premiers œufs, le médian et les derniers arrivent à un stade, chacun avec son intervalle',
  'page-meaning-spell': () => 'une suite ininterrompue de températures nuisibles à un incubateur',
  'page-meaning-lifting': () => 'quand les incubateurs peuvent sortir',
  'page-meaning-tally': () => 'ce qui a été compté dans un incubateur levé',
  'page-meaning-ice': () => 'hautes eaux du printemps ; glace qui se forme sur le fond',
  'page-sign-in-title': () => 'Ouvrir une session',
  'page-sign-in-name': () => 'Nom',
  'page-sign-in-password': () => 'Mot de passe',
  'page-sign-in-do': () => 'Ouvrir la session',
  'page-invitation-title': () => 'Une invitation',
  'page-invitation-answer': ({ by, role }) =>
    `${whoFirst('fr', by)} vous invite à ${invited[role]}. Choisissez un nom et un mot de passe.`,
  'page-invitation-do': () => 'Créer mon compte',
  'page-account-title': () => 'Votre compte',
  'page-account-answer': ({ name, role }) => `Session ouverte : ${name}, ${role}.`,
  'page-account-password': () => 'Changer le mot de passe',
  'page-account-old': () => 'Mot de passe actuel',
  'page-account-new': () => 'Nouveau mot de passe',
  'page-account-sessions': () => 'Vos sessions ouvertes',
  'page-account-end': () => 'La fermer',
  'page-account-this': () => 'celle-ci',
  'page-account-unknown': () => 'un navigateur qui ne se nomme pas',
  'page-account-on-iphone': ({ browser }) => `${browser} sur un iPhone`,
  'page-account-on-ipad': ({ browser }) => `${browser} sur un iPad`,
  'page-account-on-android': ({ browser }) => `${browser} sous Android`,
  'page-account-on-windows': ({ browser }) => `${browser} sous Windows`,
  'page-account-on-mac': ({ browser }) => `${browser} sur un Mac`,
  'page-account-on-chromeos': ({ browser }) => `${browser} sous ChromeOS`,
  'page-account-on-linux': ({ browser }) => `${browser} sous Linux`,
};
