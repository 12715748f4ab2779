import type { StationFinding } from '../group/judging/findings.js';
import { isoInstant, type Language, words } from '../words/index.js';

const UNITS = { temperature: '°C', level: 'm', discharge: 'm³/s' } as const;

export interface FindingAnswer {
  readonly id: string;
  readonly station: string;
  readonly quantity: string;
  readonly check: string;
  readonly from: string;
  readonly to: string;
  /** QARTOD: 1 pass, 2 not evaluated, 3 suspect, 4 fail. */
  readonly flag: number;
  readonly explained: string;
  readonly source: string;
  readonly figures: Readonly<Record<string, number>>;
  /** What would mend it: °C, or seconds, to add. */
  readonly offer: null | { readonly quantity: string; readonly add: number; readonly course: string };
  readonly ruling: null | {
    readonly verdict: string;
    readonly reason: string;
    readonly by: string;
    readonly at: string;
  };
}

/** A finding for other programs, its sentence in the language asked for. */
export function findingAnswer(finding: StationFinding, language: Language): FindingAnswer {
  const { id, station, quantity, kind, from, to, flag, figures, offer, ruling } = finding;
  return {
    id,
    station,
    quantity,
    check: kind,
    from: isoInstant(from),
    to: isoInstant(to),
    flag,
    explained: explained(finding, language),
    source: words(language, `check-source-${kind}`, {}),
    figures,
    offer:
      offer === null
        ? null
        : {
            quantity: offer.quantity,
            add: offer.quantity === 'clock' ? offer.add / 1000 : offer.add,
            course: offer.course,
          },
    ruling:
      ruling === null
        ? null
        : {
            verdict: ruling.verdict,
            reason: ruling.reason,
            by: ruling.by,
            at: isoInstant(Date.parse(ruling.at)),
          },
  };
}

/** What the check found, in a sentence or two. */
export function explained({ kind, figures, flag, quantity }: StationFinding, language: Language): string {
  return words(language, `finding-${kind}`, { figures, flag, unit: UNITS[quantity] });
}
