import { type Day, localDate } from '../days.js';
import { written } from '../download.js';
import { utf8Marked } from './encodings.js';

/** Column names as the national climate service's open data carries them in both languages. */
const COLUMNS = {
  en: {
    place: ['Longitude (x)', 'Latitude (y)', 'Station Name', 'Climate ID', 'Date/Time'],
    parts: ['Year', 'Month', 'Day', 'Data Quality'],
    flag: 'Flag',
    values: ['Max Temp', 'Min Temp', 'Mean Temp', 'Total Precip', 'Snow on Grnd'],
    units: [' (°C)', ' (°C)', ' (°C)', ' (mm)', ' (cm)'],
  },
  fr: {
    place: ['Longitude (x)', 'Latitude (y)', 'Nom de la Station', 'ID climatologique', 'Date/Heure'],
    parts: ['Année', 'Mois', 'Jour', 'Qualité des Données'],
    flag: 'Indicateur',
    values: ['Temp max.', 'Temp min.', 'Temp moy.', 'Précip. tot.', 'Neige au sol'],
    units: ['(°C)', '(°C)', '(°C)', ' (mm)', ' (cm)'],
  },
};

/**
 * A daily file of the climate service, shortened by the columns nobody here reads: every cell quoted, several
 * temperature columns, a flag beside each value; decimal comma in French.
 */
export function climateDaily(name: string, days: readonly Day[], language: 'en' | 'fr'): Uint8Array {
  const says = COLUMNS[language];
  const number = (value: number) => written(value, 1, language === 'fr');
  const header = [
    ...says.place,
    ...says.parts,
    ...says.values.flatMap((value, i) => [`${value}${says.units[i]}`, `${value} ${says.flag}`]),
  ];
  const rows = days.map(({ at, mean, min, max }) => {
    const date = localDate(at);
    const place = [
      language === 'fr' ? '-66,58' : '-66.58',
      language === 'fr' ? '47,13' : '47.13',
      name,
      '8109999',
    ];
    return [
      ...place,
      date,
      ...date.split('-'),
      '',
      number(max),
      '',
      number(min),
      '',
      number(mean),
      '',
      '',
      'M',
      '',
      '',
    ];
  });
  return utf8Marked(
    [header, ...rows].map((cells) => `${cells.map((cell) => `"${cell}"`).join(',')}\n`).join(''),
  );
}
