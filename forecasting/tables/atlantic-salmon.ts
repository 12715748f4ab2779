import type { DevelopmentTable, HarmLimit, Source } from '../table.js';
import {
  afterHatch,
  COLD_EMERGENCE,
  DO_NOT_HANDLE,
  eyeUp,
  FREEZING,
  HATCH_SPREAD,
  LEAVES_BOX,
  LOT_SPREAD,
  LOT_SPREAD_SOURCES,
  SUDDEN_CHANGE,
  TEMPER,
} from './common.js';

const ELLIOTT: Source = {
  cite: 'Elliott & Elliott 2010, J. Fish Biol. 77:1793-1817',
  mark: 'memory',
  of: 'limit',
};
const HOURS: Source = {
  cite: 'a choice of this project',
  inFrench: 'un choix de ce projet',
  mark: 'ours',
  of: 'hours',
};

export const ATLANTIC_SALMON_HARM: readonly HarmLimit[] = [
  {
    kind: 'warm',
    severity: 'lowers-survival',
    fromProgress: 0,
    toProgress: 1,
    limit: 12,
    hours: 24,
    sources: [
      {
        cite: 'Gunnes 1979 (high mortality and abnormal swim-up at a constant 12 °C and above)',
        inFrench: 'Gunnes 1979 (forte mortalité et montée anormale à 12 °C constants et plus)',
        mark: 'abstract',
        of: 'limit',
      },
      HOURS,
    ],
  },
  {
    kind: 'warm',
    severity: 'lethal',
    fromProgress: 0,
    toProgress: 1,
    limit: 16,
    hours: 6,
    sources: [ELLIOTT, HOURS],
  },
  {
    kind: 'warm',
    severity: 'lethal',
    fromProgress: 1,
    toProgress: 1.7,
    limit: 22,
    hours: 6,
    sources: [ELLIOTT, HOURS],
  },
  ...FREEZING,
  SUDDEN_CHANGE,
  COLD_EMERGENCE,
  {
    kind: 'cold-start',
    severity: 'advice',
    fromProgress: 0,
    toProgress: 0.25,
    limit: 4,
    hours: 24,
    sources: [
      {
        cite: 'Peterson, Spinney & Sreedharan 1977, J. Fish. Res. Board Can. 34:31-43 (more than 20% die started below 4 °C, 5% or less above)',
        inFrench:
          'Peterson, Spinney & Sreedharan 1977, J. Fish. Res. Board Can. 34:31-43 (plus de 20 % meurent si le départ se fait sous 4 °C, 5 % ou moins au-dessus)',
        mark: 'abstract',
        of: 'limit',
      },
      {
        cite: 'Canadian hatcheries incubated mostly at 0.5-1 °C all the same: advice before planting, never an alarm; judged to 0.25 of the way',
        inFrench:
          'des écloseries canadiennes ont tout de même incubé surtout à 0,5-1 °C : un conseil avant la mise en place, jamais une alerte; jugé jusqu’au quart du chemin',
        mark: 'ours',
        of: 'span',
      },
      HOURS,
    ],
  },
];

/** Crisp's power law, borne out below 1 °C: 256 d at 0.16 °C where 250-260 were seen, 211 at 1.0 (206-221). */
export const atlanticSalmon: DevelopmentTable = {
  id: 'atlantic-salmon',
  species: 'Salmo salar',
  name: { en: 'Atlantic salmon (Crisp)', fr: 'Saumon atlantique (Crisp)' },
  stages: [
    eyeUp(0.5),
    {
      stage: 'hatch',
      needs: { law: { form: 'power', log10a: 5.1908, b: -2.6562, alpha: -11 } },
      eggSpread: 0.03,
      validity: { min: 0, max: 12 },
      sources: [
        { cite: 'Crisp 1981, Freshwater Biology 11:361-368', mark: 'memory', of: 'law, 2.4-12 °C' },
        {
          cite: 'Wallace & Heggberget 1988, Can. J. Fish. Aquat. Sci. 45:193-196',
          mark: 'abstract',
          of: 'validity below 2.4 °C',
        },
        ...HATCH_SPREAD,
      ],
    },
    ...afterHatch(1.7),
  ],
  lotSpread: LOT_SPREAD,
  ownSpread: 0.02,
  doNotHandle: DO_NOT_HANDLE,
  temper: TEMPER,
  leavesBox: LEAVES_BOX,
  harm: ATLANTIC_SALMON_HARM,
  sources: [
    ...LOT_SPREAD_SOURCES,
    {
      cite: 'two published laws differ by up to 3.2% over 0-14 °C (Gorodilov 1996)',
      inFrench: 'deux lois publiées diffèrent d’au plus 3,2 % de 0 à 14 °C (Gorodilov 1996)',
      mark: 'ours',
      of: 'ownSpread',
    },
  ],
};

/**
 * Gorodilov's law gives D as a multiple of D at 0 °C. That day count is set to Crisp's 265.86 d: with it the two
 * laws agree within the 3.2 % over 0-14 °C that the abstract states.
 */
export const atlanticSalmonGorodilov: DevelopmentTable = {
  ...atlanticSalmon,
  id: 'atlantic-salmon-gorodilov',
  name: { en: 'Atlantic salmon (Gorodilov)', fr: 'Saumon atlantique (Gorodilov)' },
  stages: atlanticSalmon.stages.map((row) =>
    row.stage === 'hatch'
      ? {
          ...row,
          needs: { law: { form: 'log-quadratic', d0: 265.86, c1: -0.0967, c2: 0.00207 } },
          validity: { min: 0, max: 14 },
          sources: [
            { cite: 'Gorodilov 1996, Environmental Biology of Fishes 47:109', mark: 'abstract', of: 'law' },
            {
              cite: "Crisp 1981's law at 0 °C",
              inFrench: 'la loi de Crisp 1981 à 0 °C',
              mark: 'computed',
              of: 'd0',
            },
            ...HATCH_SPREAD,
          ],
        }
      : row,
  ),
};
