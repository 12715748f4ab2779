import type { DevelopmentTable, HarmLimit, PublishedMortality, Source } from '../table.js';
import {
  afterHatch,
  DO_NOT_HANDLE,
  EYE_UP_TAKEN_OVER,
  eyeUp,
  FREEZING,
  HATCH_SPREAD,
  LEAVES_BOX,
  LOT_SPREAD,
  SUDDEN_CHANGE,
  TEMPER,
} from './common.js';

const HOURS: Source = {
  cite: 'a choice of this project',
  inFrench: 'un choix de ce projet',
  mark: 'ours',
  of: 'hours',
};
const LOT: Source = {
  cite: 'taken over from Atlantic salmon',
  inFrench: 'repris du saumon atlantique',
  mark: 'ours',
  of: 'lotSpread',
};

function warm(
  severity: 'lethal' | 'lowers-survival',
  limit: number,
  source: Source,
  mortality?: PublishedMortality,
): HarmLimit {
  const hours = severity === 'lethal' ? 6 : 24;
  return {
    kind: 'warm',
    severity,
    fromProgress: 0,
    toProgress: 1,
    limit,
    hours,
    sources: [{ ...source, of: 'limit' }, HOURS],
    ...(mortality === undefined ? {} : { mortality }),
  };
}

const BROWN_AT_16: Source = {
  cite: 'J. Fish Biol. 62:580-590 (2003): best at 8-10 °C, none hatched at 16 °C',
  inFrench: 'J. Fish Biol. 62:580-590 (2003) : le mieux à 8-10 °C, aucune éclosion à 16 °C',
  mark: 'abstract',
};

export const brownTrout: DevelopmentTable = {
  id: 'brown-trout',
  species: 'Salmo trutta',
  name: { en: 'Brown trout (Crisp)', fr: 'Truite brune (Crisp)' },
  stages: [
    eyeUp(0.5, EYE_UP_TAKEN_OVER),
    {
      stage: 'hatch',
      needs: { law: { form: 'power', log10a: 28.8392, b: -13.9306, alpha: -80 } },
      eggSpread: 0.03,
      validity: { min: 1.9, max: 11.2 },
      sources: [
        { cite: 'Crisp 1981, Freshwater Biology 11:361-368', mark: 'memory', of: 'law, validity' },
        ...HATCH_SPREAD,
      ],
    },
    ...afterHatch(1.7),
  ],
  lotSpread: LOT_SPREAD,
  ownSpread: 0.03,
  doNotHandle: DO_NOT_HANDLE,
  temper: TEMPER,
  leavesBox: LEAVES_BOX,
  harm: [
    warm('lowers-survival', 13, {
      cite: 'Elliott & Elliott 2010, J. Fish Biol. 77:1793-1817 (upper limit for eggs; others find 14-16)',
      inFrench:
        'Elliott & Elliott 2010, J. Fish Biol. 77:1793-1817 (limite supérieure des œufs; d’autres trouvent 14-16)',
      mark: 'memory',
    }),
    warm('lethal', 16, BROWN_AT_16, {
      from: 1,
      to: 1,
      conditions: {
        en: 'a constant 16 °C from fertilisation on, in the laboratory',
        fr: '16 °C constants dès la fécondation, en laboratoire',
      },
      source: { ...BROWN_AT_16, of: 'mortality' },
    }),
    ...FREEZING,
    SUDDEN_CHANGE,
  ],
  sources: [
    LOT,
    {
      cite: 'spread between one lot and another',
      inFrench: 'dispersion d’un lot à l’autre',
      mark: 'ours',
      of: 'ownSpread',
    },
  ],
};

/** At 15 °C the law gives 18 d where Kwain saw 25-26: its range ends at 12 °C. At 3 °C it gives 107 (97-111 seen). */
export const rainbowTrout: DevelopmentTable = {
  id: 'rainbow-trout',
  species: 'Oncorhynchus mykiss',
  name: { en: 'Rainbow trout (Crisp)', fr: 'Truite arc-en-ciel (Crisp)' },
  stages: [
    eyeUp(0.5, EYE_UP_TAKEN_OVER),
    {
      stage: 'hatch',
      needs: { law: { form: 'power', log10a: 4.0313, b: -2.0961, alpha: -6 } },
      eggSpread: 0.03,
      validity: { min: 3, max: 12 },
      sources: [
        { cite: 'Crisp 1981, Freshwater Biology 11:361-368', mark: 'memory', of: 'law' },
        {
          cite: 'Kwain (97-111 d at 3 °C; 25-26 d at 15 °C against 18)',
          inFrench: 'Kwain (97-111 j à 3 °C; 25-26 j à 15 °C contre 18)',
          mark: 'abstract',
          of: 'validity',
        },
        ...HATCH_SPREAD,
      ],
    },
    ...afterHatch(1.7),
  ],
  lotSpread: LOT_SPREAD,
  ownSpread: 0.05,
  doNotHandle: DO_NOT_HANDLE,
  temper: TEMPER,
  leavesBox: LEAVES_BOX,
  harm: [
    warm('lowers-survival', 13, {
      cite: 'hatchery rule for eggs',
      inFrench: 'règle d’écloserie pour les œufs',
      mark: 'common practice',
    }),
    warm('lethal', 18, {
      cite: 'a choice of this project: no source',
      inFrench: 'un choix de ce projet : aucune source',
      mark: 'ours',
    }),
    ...FREEZING,
    SUDDEN_CHANGE,
  ],
  sources: [
    LOT,
    {
      cite: 'from the distance to what Kwain observed',
      inFrench: 'd’après l’écart à ce qu’a observé Kwain',
      mark: 'ours',
      of: 'ownSpread',
    },
  ],
};

const BROOK_MULTIPLES: Source = {
  cite: 'Turkish J. Vet. Anim. Sci., "The early development of brook trout": 245, 415 and 675 degree-days at 4-12 °C',
  inFrench:
    'Turkish J. Vet. Anim. Sci., « The early development of brook trout » : 245, 415 et 675 degrés-jours à 4-12 °C',
  mark: 'abstract',
  of: 'factor',
};

const HOKANSON: Source = {
  cite: 'Hokanson et al. 1973, J. Fish. Res. Board Can. 30 (half hatch at 12.7 °C)',
  inFrench: 'Hokanson et al. 1973, J. Fish. Res. Board Can. 30 (la moitié éclôt à 12,7 °C)',
  mark: 'memory',
};

const BROOK_HARM: readonly HarmLimit[] = [
  warm('lowers-survival', 12.7, HOKANSON, {
    from: 0.5,
    to: 0.5,
    conditions: {
      en: 'a constant 12.7 °C from fertilisation to hatch, in the laboratory',
      fr: '12,7 °C constants de la fécondation à l’éclosion, en laboratoire',
    },
    source: { ...HOKANSON, of: 'mortality' },
  }),
  warm('lethal', 15, {
    cite: 'a choice of this project: no source',
    inFrench: 'un choix de ce projet : aucune source',
    mark: 'ours',
  }),
  ...FREEZING,
  SUDDEN_CHANGE,
];

const fahrenheit = (degrees: number) => (degrees - 32) / 1.8;

/** A table of days, not thermal units, which never arrive near 0 °C. ln D runs straight between the rows. */
export const brookTrout: DevelopmentTable = {
  id: 'brook-trout',
  species: 'Salvelinus fontinalis',
  name: { en: 'Brook trout (days at temperatures)', fr: 'Omble de fontaine (jours selon la température)' },
  stages: [
    eyeUp(0.59, BROOK_MULTIPLES),
    {
      stage: 'hatch',
      needs: {
        law: {
          form: 'days-at',
          rows: [
            { celsius: fahrenheit(35), days: 144 },
            { celsius: fahrenheit(40), days: 103 },
            { celsius: fahrenheit(45), days: 68 },
            { celsius: fahrenheit(50), days: 44 },
            { celsius: fahrenheit(55), days: 35 },
          ],
        },
      },
      eggSpread: 0.03,
      validity: { min: fahrenheit(35), max: fahrenheit(55) },
      sources: [
        {
          cite: 'Leitritz & Lewis 1976, Trout and Salmon Culture, Calif. Fish Bulletin 164',
          mark: 'memory',
          of: 'law, validity',
        },
        ...HATCH_SPREAD,
      ],
    },
    ...afterHatch(1.63, [BROOK_MULTIPLES]),
  ],
  lotSpread: LOT_SPREAD,
  ownSpread: 0.06,
  doNotHandle: DO_NOT_HANDLE,
  temper: TEMPER,
  leavesBox: LEAVES_BOX,
  harm: BROOK_HARM,
  sources: [
    LOT,
    {
      cite: 'incubation of four brook trout strains: 457-549 degree-days to the last hatch at 5.1 °C as here, 588-672 at 9.4 °C, a quarter longer than here',
      inFrench:
        'incubation de quatre lignées d’omble de fontaine : 457-549 degrés-jours jusqu’à la dernière éclosion à 5,1 °C comme ici, 588-672 à 9,4 °C, un quart de plus qu’ici',
      mark: 'abstract',
      of: 'ownSpread',
    },
    { cite: 'the size of it is ours', inFrench: 'son ampleur est de nous', mark: 'ours', of: 'ownSpread' },
  ],
};

/** Fixed thermal units, for hatcheries and mild water only: below 4 °C they come too late or never. */
export const brookTroutUnits: DevelopmentTable = {
  ...brookTrout,
  id: 'brook-trout-thermal-units',
  name: {
    en: 'Brook trout (thermal units, 4 to 12 °C only)',
    fr: 'Omble de fontaine (degrés-jours, 4 à 12 °C seulement)',
  },
  stages: [
    unitsRow('eye-up', 245, 0.03),
    unitsRow('hatch', 415, 0.03),
    unitsRow('button-up', 675, 0.04),
    ...afterHatch(1.63, [BROOK_MULTIPLES]).slice(1),
  ],
};

function unitsRow(stage: string, units: number, eggSpread: number) {
  return {
    stage,
    needs: { law: { form: 'thermal-units' as const, units, base: 0 } },
    eggSpread,
    validity: { min: 4, max: 12 },
    sources: [{ ...BROOK_MULTIPLES, of: 'law, validity' }, ...HATCH_SPREAD],
  };
}
