import { type Kept, written } from '../download.js';
import { shown } from './clocks.js';
import { utf8Marked } from './encodings.js';

/** The national hydrometric service's real-time file: bilingual headers, level in m and discharge in m³/s. */
export function hydrometric(id: string, level: readonly Kept[], discharge: readonly Kept[]): Uint8Array {
  const header =
    " ID,Date,Water Level / Niveau d'eau (m),Grade,Symbol / Symbole,QA/QC,Discharge / Débit (cms),Grade,Symbol / Symbole,QA/QC";
  const rows = level.map(({ at, value }, i) => {
    const stamp = shown(at, 'UTC-4', "yyyy-MM-dd'T'HH:mm:ssZZ");
    return `${id},${stamp},${written(value, 3)},,,1,${written(discharge[i]!.value, 2)},,,1`;
  });
  return utf8Marked([header, ...rows].map((line) => `${line}\r\n`).join(''));
}
