import type { PublishedMortality, Source } from '../table.js';
import type { Progress } from '../units.js';
import type { Severity } from './spell.js';

const BECKER_1983: Source = {
  cite: 'Becker, Neitzel & Abernethy 1983, N. Am. J. Fish. Manage. 3:373 (chinook salmon)',
  mark: 'abstract',
  of: 'dose',
};
const BECKER_1982: Source = {
  cite: 'Becker et al. 1982, Trans. Am. Fish. Soc. 111:624 (chinook salmon)',
  mark: 'abstract',
  of: 'dose',
};
const TAKEN_OVER: Source = {
  cite: 'found for chinook salmon, taken over for every table; a box before hatch is watched, after it urgent',
  inFrench:
    'valeurs trouvées pour le saumon chinook, reprises pour chaque table; avant l’éclosion, l’incubateur est à surveiller, après, c’est urgent',
  mark: 'ours',
  of: 'species, severity, span',
};

/** How long some eggs bear being out of the water. */
export interface ExposureDose {
  readonly fromProgress: Progress;
  readonly toProgress: Progress;
  readonly hours: number;
  readonly severity: Extract<Severity, 'watch' | 'lethal'>;
  readonly sources: readonly Source[];
  readonly mortality: readonly PublishedMortality[];
}

const still = (share: number) => ({ from: 1 - share, to: 1 - share });

/**
 * Doses out of the water differ by stage by a thousandfold: eggs and embryos bear days where alevins near emergence
 * bear not six hours, nor an hour a day.
 */
export const EXPOSURE_DOSES: readonly ExposureDose[] = [
  {
    fromProgress: 0,
    toProgress: 0.5,
    hours: 1,
    severity: 'watch',
    sources: [BECKER_1983, TAKEN_OVER],
    mortality: [
      {
        ...still(0.98),
        conditions: {
          en: 'chinook salmon eggs out of the water for 12 days, in damp gravel',
          fr: 'œufs de saumon chinook hors de l’eau pendant 12 jours, en gravier humide',
        },
        source: BECKER_1983,
      },
    ],
  },
  {
    fromProgress: 0.5,
    toProgress: 1,
    hours: 1,
    severity: 'watch',
    sources: [BECKER_1983, TAKEN_OVER],
    mortality: [
      {
        ...still(0.92),
        conditions: {
          en: 'chinook salmon embryos out of the water for 12 days',
          fr: 'embryons de saumon chinook hors de l’eau pendant 12 jours',
        },
        source: BECKER_1983,
      },
      {
        ...still(0.53),
        conditions: {
          en: 'chinook salmon embryos out of the water for 20 days',
          fr: 'embryons de saumon chinook hors de l’eau pendant 20 jours',
        },
        source: BECKER_1983,
      },
    ],
  },
  {
    fromProgress: 1,
    toProgress: 1.35,
    hours: 6,
    severity: 'lethal',
    sources: [BECKER_1983, TAKEN_OVER],
    mortality: [
      {
        ...still(0.96),
        conditions: {
          en: 'newly hatched chinook salmon out of the water for 6 hours; mortality was high at 48 hours',
          fr: 'saumons chinook qui viennent d’éclore, hors de l’eau pendant 6 heures ; mortalité élevée à 48 heures',
        },
        source: BECKER_1983,
      },
    ],
  },
  {
    fromProgress: 1.35,
    toProgress: 1.7,
    hours: 1,
    severity: 'lethal',
    sources: [BECKER_1982, BECKER_1983, TAKEN_OVER],
    mortality: [
      {
        from: 0.95,
        to: 1,
        conditions: {
          en: 'chinook salmon shortly before emergence out of the water for 6 hours, or for an hour a day: nearly all died',
          fr: 'saumons chinook peu avant l’émergence hors de l’eau pendant 6 heures, ou une heure par jour : presque tous morts',
        },
        source: BECKER_1982,
      },
    ],
  },
];
