import type { AdapterRemark } from '../download.js';
import type { Candidate, ValueContext } from './candidates.js';
import { fold } from './fold.js';
import { type Temperatures, withUnits } from './temperature-unit.js';

const sensorWords =
  /\b(?:int(?:ernal|erne)?|ext(?:ernal|erne)?|probe|sonde|sensor|capteur|channel|canal|ch|surface|bottom|fond|top|haut|bas|no|temp(?:erature)?|t|c|f|k|deg|celsius|\d+)\b/g;
/** Columns each headed by a station's name; null where the headers could as well be sensors of one logger. */
export function asStations(
  context: ValueContext,
  candidates: readonly Candidate[],
  assumed: AdapterRemark[],
): Temperatures | null {
  const { headers, asked, known, hasStationColumn } = context;
  if (headers === null || asked.station !== undefined || hasStationColumn || candidates.length === 0)
    return null;
  const names = candidates.map(({ name }) => stationIn(name));
  const rests = names.map((name) => fold(name).replace(sensorWords, '').trim());
  const areKnown = names.every((name) => known.zoneOf(name) !== null);
  if (
    !areKnown &&
    (candidates.length < 2 || new Set(names).size < names.length || rests.some((rest) => rest === ''))
  )
    return null;
  if (candidates.some(({ says }) => says.statistic !== null)) return null;
  const found = withUnits(context, candidates, assumed);
  if (!areKnown) assumed.push({ code: 'columns-taken-for-stations', with: { stations: names } });
  return { ...found, values: found.values.map((value, i) => ({ ...value, station: names[i] })) };
}

/** "Temp. pont bleu (°C)" names the station "pont bleu". */
function stationIn(header: string): string {
  const name = header
    .replace(/[\s,]*[([]?\s*(?:[°º˚]|deg\.?)\s*[CFK]\s*[)\]]?\s*$/i, '')
    .replace(/\s*[([]\s*[CFK]\s*[)\]]\s*$/i, '')
    .replace(/^temp(?:erature|érature|\.)?\s*(?:[-:_]|\bde\b|\bdu\b)?\s+/i, '')
    .trim();
  return name === '' ? header : name;
}
