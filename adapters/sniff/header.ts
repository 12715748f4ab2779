import type { Quantity } from '../batch.js';
import type { TemperatureUnit } from '../download.js';
import { fold } from './fold.js';
import { dischargeFactor, levelFactor, temperatureUnit } from './unit-text.js';

export type ColumnRole =
  | 'time'
  | 'station'
  | 'latitude'
  | 'longitude'
  | 'unit'
  | 'zone'
  | 'value'
  /** A temperature that is not that of water or air: dew point, wind chill, the logger's own case. */
  | 'other-temperature'
  /** Known to be something else: a counter, a flag, a battery. */
  | 'left'
  | 'unknown';

/** What a header says of its column, in English or French. */
export interface HeaderSays {
  readonly role: ColumnRole;
  readonly quantity: Quantity;
  readonly medium: 'water' | 'air' | null;
  readonly statistic: 'mean' | 'max' | 'min' | null;
  readonly unit: TemperatureUnit | null;
  /** Factor to m or m³/s for the other quantities; null where the header states no unit. */
  readonly factor: number | null;
  /** 0-9: how plainly the header says its role. */
  readonly strength: number;
}

const nothing: HeaderSays = {
  role: 'unknown',
  quantity: 'temperature',
  medium: null,
  statistic: null,
  unit: null,
  factor: null,
  strength: 0,
};

const flags =
  /\b(flags?|indicateur|drapeaux?|qc|qa|quality|qualite|grades?|symbole?s?|remarks?|remarques?|notes?|comments?|commentaires?|events?|evenements?|status|statut|approval|cd)\b/;
/** Worked out from temperatures, or of something else than water and air, whether or not the header says degrees. */
const derived =
  /\b(dew|rosee|wind ?chill|chill|refroid|eolien|humidex|hmdx|deg(?:ree)? days?|degres jours|djc|djr|wet bulb|dewpoint)\b/;
/** Temperatures of the instrument or the ground. */
const elsewhere = /\b(soil|internal|interne|board|case|boitier|battery|batterie|pile|carte|panel|panneau)\b/;
const others =
  /\b(batt(?:ery|erie)?|volt(?:age|s)?|pile|humidity|hum|rh|humidite|pressure|press|pression|baro|stn press|lux|light|lumiere|intensity|intensite|conductivity|conductivite|cond|salinity|ph|oxygen|oxygene|turbidity|turbidite|rain|pluie|snow|neige|precip(?:itation|itations)?|wind|vent|vis(?:ibility|ibilite)?|weather|gust|rafale|speed|vitesse|dir|sd|std|stdev|count|compte|month|mois|year|annee|day|jour|record|enregistrement|row|ligne|no|numero|rssi|agency cd)\b/;
const levels = /\b(level|niveau|stage|gau?ge height|hauteur d eau|hauteur)\b/;
const discharges = /\b(discharge|debit|stream ?flow|flow|ecoulement)\b/;
/** What only weather stations record: beside such columns a bare "Temp" is the air's. */
const weather =
  /\b(dew|rosee|wind|vent|chill|eolien|humidex|hmdx|rain|pluie|snow|neige|precip(?:itations?)?|visib(?:ility|ilite)|weather)\b/;
const station =
  /^(station|station id|station name|station no|station number|site|site id|site name|site no|site code|site number|id|climate id|id climat(?:ologique)?|nom de la station|nom station|no de station|numero de station|location|location id|place|lieu|endroit|emplacement|poste|stream|ruisseau|logger id|id station|id site|code station|station code)$/;
/** Of two columns that name stations the one with the lasting identifier goes first. */
const stationId = /\b(id|no|code|number|numero|climatologique)\b/;
const time =
  /\b(date ?times?|dates?|times?|timestamps?|heures?|horodatage|horodateur|clock|horloge|hour|instant|epoch|unix|moment|dt|datetime|lst|hnl|utc|gmt|serial day|jour julien|excel)\b/;
const temperature = /(?:^|[^a-z])(w|water|air|a|t)?_?temp(?:erature|s\b|\b|[cfk]\b|r\b|moy|max|min)?/;
const water =
  /\b(water|eau|wtemp|watertemp|stream|river|riviere|ruisseau|tw|twater|gravel|gravier|hyporheic|h2o)\b/;
const air = /\b(air|atemp|airtemp|tair|ambient|ambiant|ambiante)\b/;
const mean = /\b(mean|avg|average|moy|moyen|moyenne|med|tmean|tavg)\b|(?:^|\s)temp ?moy/;
const maximum = /\b(max|maximum|tmax|high|maximale|maximal)\b/;
const minimum = /\b(min|minimum|tmin|low|minimale|minimal)\b/;
/** USGS parameter codes (help of the national water information system; from memory) in the names of RDB columns. */
const rdb = /^(?:\d+_)?(?:\d{1,3}_)?(00010|00011|00020|00021|00060|00065)(?:_(0000[123]|3[0-9]{4}))?$/;

/** Reads one header. Order matters: what a column is not is decided before what it is. */
export function readHeader(header: string): HeaderSays {
  const folded = fold(header);
  if (folded === '') return nothing;
  const coded = rdbHeader(header.trim());
  if (coded !== null) return coded;
  if (/^(#|no|n|record|rec|index|row|ligne|id enregistrement|num)$/.test(folded))
    return { ...nothing, role: 'left', strength: 9 };
  if (/^(lat|latitude|latitude y|lat y)$/.test(folded)) return { ...nothing, role: 'latitude', strength: 9 };
  if (/^(lon|long|lng|longitude|longitude x|lon x)$/.test(folded))
    return { ...nothing, role: 'longitude', strength: 9 };
  if (/^(units?|unites?)$/.test(folded)) return { ...nothing, role: 'unit', strength: 9 };
  if (
    /^(tz|tz cd|time ?zone|fuseau( horaire)?|utc offset|gmt offset|decalage( utc| horaire)?|offset|zone( horaire)?)$/.test(
      folded,
    )
  )
    return { ...nothing, role: 'zone', strength: 9 };
  if (flags.test(folded) && !/\btemp/.test(folded.replace(flags, '').split(' ')[0] ?? ''))
    return { ...nothing, role: 'left', strength: 8 };
  if (flags.test(folded)) return { ...nothing, role: 'left', strength: 8 };
  if (station.test(folded)) return { ...nothing, role: 'station', strength: stationId.test(folded) ? 9 : 8 };
  return readMeasure(header, folded);
}

function readMeasure(header: string, folded: string): HeaderSays {
  const unit = temperatureUnit(header);
  const isTemperature = temperature.test(folded) && !/^temps\b/.test(folded);
  if (derived.test(folded) || (elsewhere.test(folded) && (isTemperature || unit !== null)))
    return { ...nothing, role: 'other-temperature', unit, strength: 7 };
  const medium = water.test(folded) ? 'water' : air.test(folded) ? 'air' : null;
  const statistic = mean.test(folded)
    ? 'mean'
    : maximum.test(folded)
      ? 'max'
      : minimum.test(folded)
        ? 'min'
        : null;
  const says = { ...nothing, role: 'value', medium, statistic, unit } as const;
  if (levels.test(folded) && !weather.test(folded) && unit === null)
    return { ...says, quantity: 'level', medium: null, factor: levelFactor(header), strength: 7 };
  if (discharges.test(folded) && unit === null)
    return { ...says, quantity: 'discharge', medium: null, factor: dischargeFactor(header), strength: 7 };
  if (isTemperature) return { ...says, strength: unit === null ? 7 : 9 };
  if (unit !== null) return { ...says, strength: medium === null ? 6 : 8 };
  if (time.test(folded) || /^(temps|jour|day)$/.test(folded))
    return { ...nothing, role: 'time', strength: 8 };
  if (others.test(folded)) return { ...nothing, role: 'left', strength: 6 };
  if (medium !== null && folded.split(' ').length <= 2) return { ...says, strength: 4 };
  return nothing;
}

function rdbHeader(header: string): HeaderSays | null {
  const found = rdb.exec(header);
  if (found === null) return null;
  const [, parameter, code] = found;
  const statistic = code === '00003' ? 'mean' : code === '00001' ? 'max' : code === '00002' ? 'min' : null;
  const says = { ...nothing, role: 'value', statistic, strength: 9 } as const;
  if (parameter === '00060') return { ...says, quantity: 'discharge', factor: 0.3048 ** 3 };
  if (parameter === '00065') return { ...says, quantity: 'level', factor: 0.3048 };
  const medium = parameter === '00010' || parameter === '00011' ? 'water' : 'air';
  return { ...says, medium, unit: parameter === '00010' || parameter === '00020' ? 'C' : 'F' };
}

/** Whether a column is one that only weather stations have. */
export function isWeather(header: string): boolean {
  return weather.test(fold(header));
}
