import type { FormatWords } from '../../../adapters/formats/remark.js';

export const formats: { [K in keyof FormatWords]: (w: FormatWords[K]) => string } = {
  'formats.empty': () =>
    'Ce fichier est vide. Refaites le relevé de l’enregistreur, ou vérifiez que la copie s’est terminée.',
  'formats.picture': () =>
    'C’est une image, pas un relevé. Choisissez le fichier qui vient de l’enregistreur.',
  'formats.recording': () =>
    'C’est un enregistrement sonore ou vidéo, pas un relevé. Choisissez le fichier qui vient de l’enregistreur.',
  'formats.pdf': () =>
    'C’est un PDF : une page à regarder, dont les nombres ne se lisent pas de façon sûre. Exportez plutôt les lectures en CSV.',
  'formats.document': () =>
    'C’est un document de texte, pas un relevé. Exportez les lectures en CSV avec le logiciel de l’enregistreur.',
  'formats.workbook': () =>
    'C’est un classeur de tableur. Ouvrez-le, choisissez « Enregistrer sous » ou « Télécharger », puis « CSV UTF-8 », et chargez ce fichier-là.',
  'formats.old-office': () =>
    'C’est un fichier bureautique d’un ancien format, probablement un classeur. Ouvrez-le, choisissez « Enregistrer sous », puis « CSV », et chargez ce fichier-là.',
  'formats.archive': () =>
    'C’est une archive qui contient d’autres fichiers. Décompressez-la et chargez un à un les fichiers qu’elle contient.',
  'formats.compressed': () =>
    'Ce fichier est compressé d’une façon qui n’est pas lue ici, ou compressé deux fois. Décompressez-le d’abord; du texte ordinaire ou un seul .gz convient.',
  'formats.database': () =>
    'C’est une base de données, pas un relevé. Exportez les lectures en CSV et chargez ce fichier-là.',
  'formats.scientific': () =>
    'C’est un fichier de données scientifiques sous une forme binaire qui n’est pas lue ici. Exportez les lectures en CSV.',
  'formats.program': () =>
    'C’est un programme, pas un relevé. Choisissez le fichier qui vient de l’enregistreur.',
  'formats.binary': () =>
    'Ce fichier est dans le format binaire propre à un enregistreur, ou il est endommagé : il ne contient aucun texte lisible. Ouvrez-le avec le logiciel de l’enregistreur et exportez les lectures en CSV.',
  'formats.login-page': () =>
    'C’est une page Web qui demande de se connecter, enregistrée sous le nom d’un relevé. Connectez-vous à ce site, puis téléchargez le fichier de nouveau.',
  'formats.web-page': () =>
    'C’est une page Web, pas un relevé. Sur ce site, cherchez « Télécharger » ou « CSV » et chargez le fichier obtenu.',
  'formats.service-error': () =>
    'C’est un message d’erreur du service à qui le fichier a été demandé; il ne contient aucune lecture. Refaites la demande à ce service.',
  'formats.old-waterml': () =>
    'C’est du WaterML 1, qui n’est pas lu ici. Demandez au service du WaterML 2.0, ou du CSV.',
  'formats.other-xml': ({ root }) =>
    `C’est un fichier XML d’une sorte qui n’est pas lue ici (il commence par « ${root} »). WaterML 2.0 ou CSV convient.`,
  'formats.json': () => 'C’est un fichier JSON, qui n’est pas lu ici. Demandez les lectures en CSV.',
};
