import type { DevelopmentTable, HarmLimit, Source, StageRow } from '../table.js';

/** Numbers that several shipped tables share, each beside its source. */

const CRISP_1988: Source = {
  cite: 'Crisp 1988, Freshwater Biology 19:41-48',
  mark: 'abstract',
  of: 'factor, validity',
};

/** Spread of hatch in a lot; in cold water first to last takes 1-3 weeks in coho. */
export const HATCH_SPREAD: readonly Source[] = [
  {
    cite: 'spread between the eggs of a lot',
    inFrench: 'dispersion entre les œufs d’un lot',
    mark: 'ours',
    of: 'eggSpread',
  },
  {
    cite: 'Konecki et al. 1995, Northwest Science 69:126-132 (first to last 1-3 weeks)',
    inFrench: 'Konecki et al. 1995, Northwest Science 69:126-132 (1 à 3 semaines du premier au dernier)',
    of: 'eggSpread',
  },
];

/** Button-up is swim-up, 1.7 times hatch; emergence has its median and a wider spread. */
export function afterHatch(factor: number, sources: readonly Source[] = [CRISP_1988]): StageRow[] {
  return [
    {
      stage: 'button-up',
      needs: { multipleOf: 'hatch', factor },
      eggSpread: 0.04,
      validity: { min: 0, max: 9.5, judged: 'at-stage' },
      sources: [
        ...sources,
        {
          cite: 'spread between the eggs of a lot',
          inFrench: 'dispersion entre les œufs d’un lot',
          mark: 'ours',
          of: 'eggSpread',
        },
      ],
    },
    {
      stage: 'emergence',
      needs: { sameAs: 'button-up' },
      eggSpread: 0.055,
      validity: { min: 0, max: 9.5, judged: 'at-stage' },
      sources: [
        {
          cite: 'García de Leániz et al. 2000, Fisheries Management and Ecology 7:489 (80% in 2 weeks); that emergence has the median of button-up is ours',
          inFrench:
            'García de Leániz et al. 2000, Fisheries Management and Ecology 7:489 (80 % en 2 semaines); que l’émergence ait la médiane de la résorption du sac vitellin est de nous',
          mark: 'ours',
          of: 'sameAs, eggSpread',
        },
        {
          cite: 'Beall et al. (95% in 12 days)',
          inFrench: 'Beall et al. (95 % en 12 jours)',
          mark: 'abstract',
          of: 'eggSpread',
        },
      ],
    },
  ];
}

/** Half of the way to hatch, known for Atlantic salmon. */
export function eyeUp(factor: number, source: Source = CRISP_1988): StageRow {
  return {
    stage: 'eye-up',
    needs: { multipleOf: 'hatch', factor },
    eggSpread: 0.03,
    validity: { min: 0, max: 9.5 },
    sources: [
      source,
      { cite: 'taken over from hatch', inFrench: 'repris de l’éclosion', mark: 'ours', of: 'eggSpread' },
    ],
  };
}

export const EYE_UP_TAKEN_OVER: Source = {
  cite: 'Crisp 1988, Freshwater Biology 19:41-48, gives 0.5 for Atlantic salmon; taken over for this species',
  inFrench:
    'Crisp 1988, Freshwater Biology 19:41-48, donne 0,5 pour le saumon atlantique; repris pour cette espèce',
  mark: 'ours',
  of: 'factor',
};

/** Two stocks of Atlantic salmon: 479.8 ± 6.4 and 472.3 ± 12.1 degree-days. Studies differ on whether stocks do. */
export const LOT_SPREAD = 0.025;
export const LOT_SPREAD_SOURCES: readonly Source[] = [
  {
    cite: 'comparison of two Atlantic salmon stocks, PMC3833687',
    inFrench: 'comparaison de deux souches de saumon atlantique, PMC3833687',
    of: 'lotSpread',
  },
  {
    cite: 'Berg & Moen 1999, J. Fish Biol. (stocks differ)',
    inFrench: 'Berg & Moen 1999, J. Fish Biol. (les souches diffèrent)',
    mark: 'abstract',
    of: 'lotSpread',
  },
  {
    cite: 'Wallace & Heggberget 1988, Can. J. Fish. Aquat. Sci. 45:193-196 (stocks do not)',
    inFrench: 'Wallace & Heggberget 1988, Can. J. Fish. Aquat. Sci. 45:193-196 (elles ne diffèrent pas)',
    mark: 'abstract',
    of: 'lotSpread',
  },
];

export const DO_NOT_HANDLE: DevelopmentTable['doNotHandle'] = {
  from: 0.05,
  to: 0.5,
  sources: [
    {
      cite: 'the span itself is a choice of this project',
      inFrench: 'l’étendue elle-même est un choix de ce projet',
      mark: 'ours',
    },
    {
      cite: 'Crisp 1990, Hydrobiologia 194:57-65 (50-60% of trout eggs died when shocked at 10-20% of the way)',
      inFrench:
        'Crisp 1990, Hydrobiologia 194:57-65 (50 à 60 % des œufs de truite sont morts d’un choc à 10-20 % du chemin)',
      mark: 'abstract',
    },
    {
      cite: 'Musialak et al. 2024, Aquaculture 579:740281 (most sensitive at gastrulation)',
      inFrench: 'Musialak et al. 2024, Aquaculture 579:740281 (les plus sensibles à la gastrulation)',
      mark: 'abstract',
    },
  ],
};

export const LEAVES_BOX: DevelopmentTable['leavesBox'] = {
  days: 10,
  min: 5,
  max: 20,
  sources: [{ cite: 'no source', inFrench: 'aucune source', mark: 'common practice' }],
};

/** Eggs are brought slowly from one water to another that differs by more. */
export const TEMPER: DevelopmentTable['temper'] = {
  limit: 2,
  sources: [{ cite: 'no source', inFrench: 'aucune source', mark: 'common practice' }],
};

const BANDS: Source = {
  cite: 'bands chosen by this project',
  inFrench: 'paliers choisis par ce projet',
  mark: 'ours',
  of: 'limit, hours',
};

/** Water supercools by at most about 0.04 °C in bulk; eggs froze at -0.76 to -0.87 °C with ice present. */
export const FREEZING: readonly HarmLimit[] = [
  {
    kind: 'freezing',
    severity: 'lethal',
    fromProgress: 0,
    toProgress: 1.7,
    limit: -0.7,
    hours: 1,
    sources: [
      BANDS,
      {
        cite: 'Fletcher et al. 1988, Aquaculture 71:369 (lethal with ice: Atlantic salmon -0.76, brown trout -0.81, brook trout -0.87 °C, after hatch in seawater)',
        inFrench:
          'Fletcher et al. 1988, Aquaculture 71:369 (mortel avec de la glace : saumon atlantique -0,76, truite brune -0,81, omble de fontaine -0,87 °C, après l’éclosion, en eau de mer)',
        mark: 'abstract',
        of: 'limit',
      },
      {
        cite: 'Osterkamp et al. 1983, Annals of Glaciology (bulk supercooling about 0.04 °C)',
        inFrench: 'Osterkamp et al. 1983, Annals of Glaciology (surfusion d’environ 0,04 °C dans la masse)',
        mark: 'abstract',
      },
    ],
    mortality: {
      from: 0.99,
      to: 1,
      conditions: {
        en: 'boxes of brown trout eggs frozen solid under 12 to 20 cm of flowing water, those that were recovered',
        fr: 'des incubateurs d’œufs de truite brune pris dans la glace sous 12 à 20 cm d’eau courante, ceux qu’on a retrouvés',
      },
      source: {
        cite: 'in-situ freezing study, Laramie River, 1975-76 (authors Reiser & Wesche: memory)',
        inFrench: 'étude du gel sur place, rivière Laramie, 1975-76 (auteurs Reiser & Wesche : de mémoire)',
        mark: 'abstract',
        of: 'mortality',
      },
    },
  },
  {
    kind: 'freezing',
    severity: 'advice',
    fromProgress: 0,
    toProgress: 1.7,
    limit: -0.2,
    hours: 1,
    sources: [BANDS],
  },
];

/** Drops at the eyed stage and at hatch; 8 h changes of +8.4 to -6.2 °C, about 1 °C an hour, did coho little harm. */
export const SUDDEN_CHANGE: HarmLimit = {
  kind: 'sudden-change',
  severity: 'lowers-survival',
  fromProgress: 0.5,
  toProgress: 1.1,
  limit: 3,
  hours: 1,
  sources: [
    {
      cite: 'a choice of this project, three times the change coho bore',
      inFrench: 'un choix de ce projet, trois fois le changement que le coho a supporté',
      mark: 'ours',
      of: 'limit, span',
    },
    {
      cite: 'Peterson, Spinney & Sreedharan 1977, J. Fish. Res. Board Can. 34:31-43 (sudden drops swell the yolk sac)',
      inFrench:
        'Peterson, Spinney & Sreedharan 1977, J. Fish. Res. Board Can. 34:31-43 (les chutes brusques gonflent le sac vitellin)',
      mark: 'abstract',
    },
    { cite: 'Tang, Bryant & Brannon 1987, Prog. Fish-Cult. 49:167-174', mark: 'abstract', of: 'limit' },
  ],
};

/** Fry that leave the gravel in water too cold to feed in starve. Their upper limit is that of alevins. */
export const COLD_EMERGENCE: HarmLimit = {
  kind: 'cold',
  severity: 'lowers-survival',
  fromProgress: 1.6,
  toProgress: 1.7,
  limit: 7,
  hours: 168,
  sources: [
    {
      cite: 'Elliott 1991, Freshwater Biology 25:61-70 (young Atlantic salmon stop feeding below 7.0 °C)',
      inFrench:
        'Elliott 1991, Freshwater Biology 25:61-70 (les jeunes saumons atlantiques cessent de se nourrir sous 7,0 °C)',
      mark: 'memory',
      of: 'limit',
    },
    {
      cite: 'a choice of this project: a week of it, in the last sixteenth before emergence',
      inFrench: 'un choix de ce projet : une semaine, dans le dernier seizième avant l’émergence',
      mark: 'ours',
      of: 'hours, span',
    },
  ],
};
