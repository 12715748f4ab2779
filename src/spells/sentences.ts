import type { JudgedSpell } from '../../forecasting/spells/spell.js';
import type { Source } from '../../forecasting/table.js';
import { citedIn, dayAndTime, type Language, words } from '../words/index.js';

/** A spell put into words, the same for the page, the terminal and a message. */
export interface SpellSentences {
  /** "Too warm", "Possibly out of the water or frozen in" */
  readonly title: string;
  /** "lethal" */
  readonly severity: string;
  readonly state: string;
  /** When it began and ended, in the group's zone. */
  readonly from: string;
  readonly to: string;
  /** What happened, to which eggs, at which stage, how sure that is. */
  readonly what: readonly string[];
  /** The limit, and the published mortality with its conditions or why there is none. */
  readonly limit: readonly string[];
  readonly sources: readonly string[];
  /** What one might do. */
  readonly toDo: readonly string[];
}

/** @param stationName how a station is called; its id where nobody says. */
export function spellSentences(
  language: Language,
  spell: JudgedSpell,
  zone: string,
  stationName: (station: string) => string = (station) => station,
): SpellSentences {
  const { kind, certainty, severity, sign, state } = spell;
  return {
    title: words(language, 'spell-title', { kind, certainty, sign }),
    severity: words(language, 'spell-severity', { severity, kind }),
    state: words(language, 'spell-state', { state }),
    from: dayAndTime(language, spell.from, zone),
    to: dayAndTime(language, spell.to, zone),
    what: [
      happened(language, spell),
      words(language, 'spell-certainty', {
        certainty,
        origin: spell.origin,
        station: stationName(spell.station),
      }),
      ...(spell.origin === 'filled' || spell.origin === 'projected'
        ? [words(language, 'spell-by-days', {})]
        : []),
      ...(spell.chance === null ? [] : [words(language, 'spell-chance', { chance: spell.chance })]),
      ...(spell.eggs > 0 ? [words(language, 'spell-eggs', { eggs: spell.eggs, boxes: spell.boxes })] : []),
      ...stageSentences(language, spell),
    ],
    limit: limitSentences(language, spell),
    sources: sourcesOf(spell).map((source) =>
      words(language, 'spell-source', { cite: citedIn(language, source), mark: source.mark ?? null }),
    ),
    toDo: toDo(language, spell),
  };
}

function happened(language: Language, spell: JudgedSpell): string {
  const { kind, hours, peak, limit, degreeHours, sign, boxes } = spell;
  switch (kind) {
    case 'too-warm':
    case 'too-cold':
    case 'freezing':
      return words(language, 'spell-beyond', {
        kind,
        hours,
        peak: peak ?? 0,
        degreeHours: degreeHours ?? 0,
        limit: limit?.value ?? 0,
      });
    case 'sudden-change':
      return words(language, 'spell-changed', { by: peak ?? 0 });
    case 'exposure':
      return words(language, 'spell-exposed', { sign: sign ?? 'frozen-in', hours, box: boxes.join(', ') });
    case 'freshet':
    case 'break-up':
    case 'low-water':
      return words(language, 'spell-gauge', { kind, hours });
  }
}

/** Lots of one spell may differ in stage: each sentence once. */
function stageSentences(language: Language, { touched, severity }: JudgedSpell): string[] {
  if (severity === 'event') return [];
  const said = touched.map(({ stages }) =>
    stages.length === 0
      ? words(language, 'spell-stage-not-known', {})
      : words(language, 'spell-stages', { stages }),
  );
  const once = [...new Set(said)];
  if (once.length < 2) return once;
  return touched.map(
    ({ box, lot }, i) => `${box} (${lot})${language === 'fr' ? '\u00a0' : ''}: ${said[i] ?? ''}`,
  );
}

function limitSentences(language: Language, { limit, kind, mortality, severity }: JudgedSpell): string[] {
  const passed =
    limit === null
      ? []
      : [words(language, 'spell-limit', { value: limit.value, unit: limit.unit, hours: limit.hours, kind })];
  const published = mortality.map(({ from, to, conditions }) =>
    words(language, 'spell-mortality', { from, to, conditions: conditions[language] }),
  );
  const constant = kind === 'too-warm' || kind === 'too-cold' ? [words(language, 'spell-constant', {})] : [];
  const none = severity === 'event' ? [words(language, 'spell-no-mortality-gauge', {})] : [];
  return [...passed, ...published, ...constant, ...none];
}

function sourcesOf({ limit, mortality }: JudgedSpell): Source[] {
  const all = [...(limit?.sources ?? []), ...mortality.map(({ source }) => source)];
  return [...new Map(all.map((source) => [source.cite, source])).values()];
}

function toDo(language: Language, { kind, certainty, boxes }: JudgedSpell): string[] {
  if (kind === 'exposure')
    return [words(language, 'spell-do-exposure', { boxes }), words(language, 'spell-not-excluded', {})];
  if (certainty === 'possible') return [words(language, 'spell-do-possible', {})];
  if (kind === 'too-warm') return [words(language, 'spell-do-warm', { boxes: boxes.length })];
  return kind === 'freezing' ? [words(language, 'spell-do-freezing', { boxes: boxes.length })] : [];
}
