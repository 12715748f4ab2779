import type { SpellRow } from '../../spells/contract.js';
import { dayTimeOf } from '../../spells/days.js';
import { spellSentences } from '../../spells/sentences.js';
import type { View } from '../view.js';

/** Spells as marks on an axis: what they are called, and from which day to which, in the group's zone. */
export interface SpellMark {
  readonly id: string;
  readonly title: string;
  readonly severity: SpellRow['severity'];
  readonly possible: boolean;
  readonly withdrawn: boolean;
  readonly from: number;
  readonly to: number;
  /** "Too warm, 7 Nov 2025, 22:12 to …" */
  readonly spoken: string;
}

export function spellMark(view: View, row: SpellRow, zone: string): SpellMark {
  const { title, from, to } = spellSentences(view.language, row, zone);
  return {
    id: row.id,
    title,
    severity: row.severity,
    possible: row.certainty === 'possible',
    withdrawn: row.state === 'withdrawn',
    from: dayTimeOf(row.from, zone),
    to: dayTimeOf(row.to, zone),
    spoken: view.say('page-spells-mark', { title, from, to }),
  };
}

interface MarksProps {
  readonly marks: readonly SpellMark[];
  readonly at: (day: number) => number;
  readonly height: number;
  /** First day of the axis: a spell before it is marked by a wedge that points back. */
  readonly begins?: number;
}

/** A wedge over the days of each spell, and the days themselves, tinted; hollow where it is only possible. */
export function SpellMarks({ marks, at, height, begins = Number.NEGATIVE_INFINITY }: MarksProps) {
  return (
    <>
      {marks.map(({ id, severity, possible, withdrawn, from, to, spoken }) => {
        const [begin, end] = [at(from), at(to)];
        const kind = `spell ${severity}${possible ? ' possible' : ''}${withdrawn ? ' withdrawn' : ''}`;
        return (
          <a href={`/spells#${encodeURIComponent(id)}`} class={kind}>
            <title>{spoken}</title>
            <rect
              class="days"
              x={`${begin}%`}
              width={`${Math.max(0.3, Math.round((end - begin) * 100) / 100)}%`}
              y="0"
              height={height}
            />
            <svg x={`${Math.round((begin + end) * 50) / 100}%`} y="0" overflow="visible" aria-hidden="true">
              <path class="wedge" d={to < begins ? 'M8 -1 v10 l-8 -5 z' : 'M-5 -1 h10 l-5 8 z'} />
            </svg>
          </a>
        );
      })}
    </>
  );
}
