import { z } from 'zod';
import {
  atlanticSalmon,
  type DevelopmentTable,
  type HarmLimit,
  type Law,
  type Needs,
  type PublishedMortality,
  type Source,
  type StageRow,
} from '../../forecasting/index.js';
import { choice, type Field, figure, id, listOf, maybe, otherwise, refuse, text, thing } from './fields.js';

/** What a group that states no spread gets: the shipped tables' own, and a table's uncertainty set wide (ours). */
const USUAL_SPREAD = { egg: 0.03, lot: 0.025, own: 0.04 };

const mark = choice('memory', 'abstract', 'common practice', 'ours', 'computed');

/** `cite: …` with, if wanted, what French readers are told, a mark and the numbers it is of; a bare line of text is a citation. */
const source: Field<Source> = z.preprocess(
  (given) => (typeof given === 'string' ? { cite: given } : given),
  thing({ cite: text, inFrench: maybe(text), mark: maybe(mark), of: maybe(text) }).transform(
    ({ cite, inFrench, mark, of }): Source => ({
      cite,
      ...(inFrench === null ? {} : { inFrench }),
      ...(mark === null ? {} : { mark }),
      ...(of === null ? {} : { of }),
    }),
  ),
);
const sources: Field<readonly Source[]> = listOf(source);

const days = figure(0.001, 100_000);
const celsius = figure(-20, 50);
const progress = figure(0, 20);
const spread = figure(0, 2);

const law: Field<Law> = z.discriminatedUnion('form', [
  thing({ form: z.literal('thermal-units'), units: figure(0.1, 100_000), base: celsius }),
  thing({
    form: z.literal('power'),
    log10a: figure(-1000, 1000),
    b: figure(-1000, 1000),
    alpha: figure(-1000, 1000),
  }),
  thing({
    form: z.literal('log-quadratic'),
    d0: days,
    c1: figure(-100, 100),
    c2: figure(-100, 100),
  }),
  thing({ form: z.literal('days-at'), rows: listOf(thing({ celsius, days })) }),
]);

const needs: Field<Needs> = thing({
  law: maybe(law),
  after: maybe(id),
  multipleOf: maybe(id),
  factor: maybe(figure(0.001, 100)),
  sameAs: maybe(id),
}).transform(({ law, after, multipleOf, factor, sameAs }, ctx): Needs => {
  if (sameAs !== null && law === null && after === null && multipleOf === null) return { sameAs };
  if (multipleOf !== null && factor !== null && law === null && after === null) return { multipleOf, factor };
  if (law !== null && sameAs === null && multipleOf === null)
    return after === null ? { law } : { after, law };
  refuse(ctx, { code: 'season.stage-needs-what', with: {} });
  return z.NEVER;
});
const validity = thing({
  min: celsius,
  max: celsius,
  judged: maybe(choice('on-the-way', 'at-stage')),
}).transform(({ min, max, judged }) => (judged === null ? { min, max } : { min, max, judged }));

const stageRow: Field<StageRow> = thing({
  stage: id,
  needs,
  eggSpread: otherwise(spread, USUAL_SPREAD.egg),
  validity,
  sources,
});

/** A figure that was published, shares 0 to 1, with the conditions it was found under. */
const mortality: Field<PublishedMortality> = thing({
  from: figure(0, 1),
  to: figure(0, 1),
  conditions: z.preprocess(
    (given) => (typeof given === 'string' ? { en: given, fr: given } : given),
    thing({ en: text, fr: text }),
  ),
  source,
});

const harmLimit: Field<HarmLimit> = thing({
  kind: choice('warm', 'freezing', 'sudden-change', 'cold-start', 'cold'),
  severity: choice('lethal', 'lowers-survival', 'advice'),
  fromProgress: progress,
  toProgress: progress,
  limit: celsius,
  hours: figure(0, 100_000),
  sources,
  mortality: maybe(mortality),
}).transform(({ mortality, ...limit }) => (mortality === null ? limit : { ...limit, mortality }));

/** A development table of the group's own, in the shape of forecasting's type. */
export const tableSchema: Field<DevelopmentTable> = thing({
  id,
  species: text,
  name: z.preprocess(
    (given) => (typeof given === 'string' ? { en: given, fr: given } : given),
    thing({ en: text, fr: text }),
  ),
  stages: listOf(stageRow),
  lotSpread: otherwise(spread, USUAL_SPREAD.lot),
  ownSpread: otherwise(spread, USUAL_SPREAD.own),
  doNotHandle: otherwise(thing({ from: progress, to: progress, sources }), atlanticSalmon.doNotHandle),
  temper: otherwise(thing({ limit: figure(0, 30), sources }), atlanticSalmon.temper),
  leavesBox: otherwise(
    thing({ days: figure(0, 365), min: figure(0, 365), max: figure(0, 365), sources }),
    atlanticSalmon.leavesBox,
  ),
  harm: listOf(harmLimit),
  sources,
});
