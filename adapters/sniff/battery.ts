import type { Delimiter } from '../download.js';
import { fieldsOf } from '../fields/quoted.js';
import { fold } from './fold.js';
import type { HeaderSays } from './header.js';
import { temperatureUnit } from './unit-text.js';

/** What a column of the battery holds: a voltage, what is left of the charge in %, or whether it is low, in words. */
export type BatteryUnit = 'V' | 'mV' | '%' | 'unstated';

/** The column of the battery's figures; position from 0. */
export interface BatteryColumn {
  readonly index: number;
  readonly name: string;
  readonly unit: BatteryUnit;
}

/** A column in which a logger or a person writes remarks; `battery`: only the battery's state. */
export interface NoteColumn {
  readonly index: number;
  readonly name: string;
  readonly battery: boolean;
}

const battery =
  /\b(?:(?:[vu]?batt?(?:er(?:y|ies|ie))?|piles?|accu(?:mulateur)?)(?:v|volts?|voltage|pct|percent|level)?|supply (?:voltage|v)|tension d alimentation)\b/;
/** Without the battery's name only where nothing else is said: a sensor's voltage is no battery. */
const bareVoltage = /^(?:volts?|voltage|tension)(?: m?v)?$/;
const state = /\b(?:status|state|etat|statut|flag|indicateur|warning|alarm|alerte|ok|low|faible)\b/;
const notes =
  /\b(?:events?|evenements?|notes?|comments?|commentaires?|remarks?|remarques?|status|statut|etat|messages?|warnings?|alarms?)\b/;

/** What a header says of the battery: its unit, that it holds the state in words, or null where it is another column. */
export function batteryHeader(header: string): BatteryUnit | 'state' | null {
  const folded = fold(header);
  if (temperatureUnit(header) !== null || /\btemp/.test(folded)) return null;
  if (!battery.test(folded) && !bareVoltage.test(folded)) return null;
  if (/\bmv\b|\bmillivolts?\b/.test(folded)) return 'mV';
  if (/%|\b(?:pct|percent|pour ?cent)\b|pct\b|percent\b/.test(folded)) return '%';
  if (/\bv(?:dc)?\b|volt|tension|batt?v\b|\b[vu]batt?\b/.test(folded)) return 'V';
  return state.test(folded) ? 'state' : 'unstated';
}

/** The column with the battery's figures: one that names the battery before a bare voltage. */
export function batteryColumn(headers: readonly string[], taken: ReadonlySet<number>): BatteryColumn | null {
  const found = headers.flatMap((name, index) => {
    const unit = taken.has(index) ? null : batteryHeader(name);
    return unit === null || unit === 'state' ? [] : [{ index, name, unit }];
  });
  return found.find(({ name }) => battery.test(fold(name))) ?? found[0] ?? null;
}

/** The columns whose words may say that the battery is low. */
export function noteColumns(
  headers: readonly string[],
  says: readonly HeaderSays[],
  taken: ReadonlySet<number>,
): NoteColumn[] {
  return headers.flatMap((name, index): NoteColumn[] => {
    if (taken.has(index) || says[index]?.role === 'value') return [];
    if (batteryHeader(name) === 'state') return [{ index, name, battery: true }];
    return notes.test(fold(name)) ? [{ index, name, battery: false }] : [];
  });
}

const low =
  '(?:low|weak|dead|flat|empty|critical|depleted|exhausted|faibles?|basses?|vides?|epuisee?s?|critique|dechargee?s?)';
const named = '(?:batt?(?:er(?:y|ies|ie))?|piles?|accu(?:mulateur)?)';
const lowBattery = new RegExp(
  `\\b${low}(?: de| la| le)* ${named}\\b|\\b${named} (?:\\w+ ){0,2}${low}\\b|\\b(?:replace|remplacer)(?: la| the)? ${named}\\b`,
);
const denied = /\b(?:not?|pas|plus|aucune?|sans|never|jamais)\b/;
const lowState = new RegExp(`^(?:lb|lo|bad|replace|remplacer|mauvaise?|${low})\\b`);

/** Whether a remark says that the battery is low ("Low battery", "Pile faible"). */
export function saysLowBattery(text: string, ofBattery = false): boolean {
  const folded = fold(text);
  if (folded === '' || denied.test(folded)) return false;
  return lowBattery.test(folded) || (ofBattery && lowState.test(folded));
}

/** What the lines above the table say of the battery when the logger was read, in words or as a figure. */
export function batteryInPreamble(
  lines: readonly string[],
  delimiter: Delimiter,
): { readonly low: string | null; readonly value: number | null; readonly unit: BatteryUnit } {
  for (const line of lines) {
    const text = fieldsOf(line, delimiter)
      .map((field) => field.trim())
      .filter((field) => field !== '')
      .join(': ');
    const found = /^[#\s"/*]*([^:=]{3,60})[:=]\s*(.+)$/.exec(text);
    const unit = found === null ? null : batteryHeader(found[1]);
    if (found === null || unit === null) {
      if (saysLowBattery(text)) return { low: text, value: null, unit: 'unstated' };
      continue;
    }
    // What it was when it was set out says nothing of how it is.
    if (
      /\b(?:launch|start|initial\w*|deploy\w*|lancement|depart|debut|type|model\w*|changed|changee)\b/.test(
        fold(found[1]),
      )
    )
      continue;
    if (saysLowBattery(text) || saysLowBattery(found[2], true))
      return { low: text, value: null, unit: 'unstated' };
    const figure = /^(\d+(?:[.,]\d+)?)\s*(mV|V|%)?/i.exec(found[2].replace(/^[:"\s]+/, ''));
    if (figure === null) continue;
    const stated = figure[2] === undefined ? null : batteryHeader(`battery ${figure[2]}`);
    const as = stated === null || stated === 'state' || stated === 'unstated' ? unit : stated;
    if (as === 'state') continue;
    return { low: null, value: Number(figure[1].replace(',', '.')), unit: as };
  }
  return { low: null, value: null, unit: 'unstated' };
}
