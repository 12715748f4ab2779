import type { FormatWords, LayoutRule } from '../../../adapters/formats/remark.js';
import { list, whole } from '../format.js';

const column = 'l’en-tête d’une colonne, ou son numéro compté à partir de 1';
/** Ce qui conviendrait dans chaque partie d’une disposition enregistrée. */
const would: Record<LayoutRule, string> = {
  layout: 'un nom (name), un repère (match) et ce qui est fixé (settled)',
  name: 'un nom de 1 à 200 caractères',
  match:
    'l’un de {"header": [en-têtes]}, {"opening": texte par lequel commence la première ligne} et {"fileName": partie du nom}',
  settled: 'un objet avec les parties qui sont fixées',
  encoding: 'utf-8, utf-16le, utf-16be, windows-1252 ou cp850',
  delimiter: '« , », « ; », « | », ou « \\t » pour une tabulation',
  decimal: '« . » ou « , »',
  headerLine: 'la ligne de l’en-tête comptée à partir de 1, ou 0 pour un fichier qui n’en a pas',
  dateOrder: 'ymd, dmy ou mdy',
  time: 'une liste d’une colonne, ou de deux si la date et l’heure sont séparées',
  temperature: column,
  level: column,
  discharge: column,
  station: column,
  unit: 'C, F ou K',
  zone: 'le nom d’un fuseau comme America/Halifax, UTC, ou UTC avec heures et minutes comme UTC-03:30',
  missing: 'une liste de textes d’au plus 40 caractères',
};

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

  'waterml.broken': ({ line }) =>
    `Ce fichier WaterML est endommagé ou incomplet à la ligne ${line}. Téléchargez-le de nouveau.`,
  'waterml.doctype': () =>
    'Ce fichier XML porte une déclaration de type de document, dont WaterML n’a jamais besoin et qui est refusée par prudence. Demandez au service du WaterML 2.0 ordinaire.',
  'waterml.too-large': ({ line }) =>
    `Ce fichier XML a, à la ligne ${line}, un morceau plus gros ou plus imbriqué que ce dont WaterML a besoin. Téléchargez-le de nouveau, ou demandez du CSV.`,
  'waterml.coverage': () =>
    'Ce WaterML garde les heures et les valeurs à part (domaine et image), ce qui n’est pas lu ici. Demandez au service des paires heure-valeur, ou du CSV.',
  'waterml.too-many-series': ({ limit }) =>
    `Ce fichier WaterML contient plus de ${whole('fr', limit)} séries, plus qu’on n’en lit d’un coup. Demandez au service moins de stations ou une période plus courte.`,
  'waterml.no-series': () =>
    'Ce fichier WaterML ne contient aucune lecture. Demandez au service une autre période ou une autre station.',

  'layout.not-json': () =>
    'Une disposition enregistrée est du JSON, et ceci n’en est pas. Exportez-la de nouveau, ou annulez la dernière modification.',
  'layout.unknown-part': ({ path, known }) =>
    `« ${path} » ne fait pas partie d’une disposition enregistrée. Ses parties sont ici ${list('fr', known)}.`,
  'layout.missing-part': ({ path, rule }) => `« ${path} » manque. Ce qui conviendrait : ${would[rule]}.`,
  'layout.wrong-part': ({ path, given, rule }) =>
    `« ${path} » vaut ${given}. Ce qui conviendrait : ${would[rule]}.`,
  'layout.column-twice': ({ column: name }) =>
    `La colonne « ${name} » est nommée deux fois. Une colonne ne peut être qu’une seule chose.`,
};

export function layoutSentence<Code extends keyof FormatWords>(problem: {
  code: Code;
  with: FormatWords[Code];
}): string {
  return formats[problem.code](problem.with);
}
