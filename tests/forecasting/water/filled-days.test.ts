import { linearRegression, linearRegressionLine, rSquared } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { Origin, waterAt } from '../../../forecasting/index.js';
import {
  air,
  asked,
  between,
  cut,
  dayOf,
  daysFrom,
  meanOf,
  redNoise,
  springs,
  station,
  stream,
} from './invented-network.js';

const ownNoise = redNoise(21, 0.7, 0.25);
/** The box's stream: less lively than the reporting one, a little warmer in autumn. */
const brook = (day: number) =>
  Math.max(0, 0.8 * stream(day) + 0.5 + ownNoise(day) - 0.5 * Number(stream(day) === 0));
const reporting = station('reporting', stream);

describe('days that a neighbour fills', () => {
  const hidden = (day: number) => between(day, '2025-11-15', '2026-01-10');
  const target = station('brook', (day) => (hidden(day) ? Number.NaN : brook(day)));
  const water = waterAt(asked(target, [reporting]));
  const filled = cut(water, water.days.mean, '2025-11-15', '2026-01-10');
  const spread = cut(water, water.days.spread, '2025-11-15', '2026-01-10');
  const truth = daysFrom('2025-11-15', '2026-01-10').map(brook);

  it('lie within their spread of what the water was', () => {
    expect(cut(water, water.days.origin, '2025-11-15', '2026-01-10')).toEqual(
      filled.map(() => Origin.filled),
    );
    const within = filled.filter((value, d) => Math.abs(value - truth[d]) <= 1.2816 * spread[d]).length;
    // 80 % of 57 days that err alike for a week or so: two standard errors are about 0.2
    expect(within / filled.length).toBeGreaterThan(0.6);
    expect(meanOf(filled.map((value, d) => Math.abs(value - truth[d])))).toBeLessThan(0.3);
    expect(Math.min(...spread)).toBeGreaterThan(0);
    expect(Math.max(...spread)).toBeLessThan(1.5);
  });

  it('say from which days to which, and from whom', () => {
    expect(water.stretches.map(({ from, to }) => [from, to])).toEqual([
      [dayOf('2025-11-15'), dayOf('2026-01-10')],
    ]);
    expect(water.stretches[0].sources.map((source) => source.station)).toEqual(['reporting']);
    expect(water.stretches[0].sources[0].weight).toBeCloseTo(1, 9);
    expect(water.remarks.find(({ code }) => code === 'filled-from')?.with).toMatchObject({
      stations: 'reporting',
      days: 57,
    });
  });

  it('name for each stretch those who spoke in it, with the weight they had there', () => {
    const holes = (day: number) =>
      between(day, '2025-11-15', '2025-12-10') || between(day, '2026-01-05', '2026-02-01');
    const brook = station('brook', (day) => (holes(day) ? Number.NaN : stream(day)), { to: '2026-02-15' });
    const early = station('early', (day) => (day > dayOf('2025-12-20') ? Number.NaN : stream(day)));
    const late = station('late', (day) =>
      between(day, '2025-11-01', '2025-12-20') ? Number.NaN : stream(day),
    );
    const { stretches } = waterAt(asked(brook, [early, late]));
    expect(stretches.map(({ sources }) => sources.map((source) => source.station))).toEqual([
      ['early'],
      ['late'],
    ]);
    for (const { sources } of stretches) expect(sources[0].weight).toBeCloseTo(1, 9);
  });

  it('are surer at the ends of a gap, where the station itself still speaks, than in its middle', () => {
    const middle = spread[28];
    expect(spread[0]).toBeLessThan(middle);
    expect(spread[56]).toBeLessThan(middle);
  });
});

describe('the bridge', () => {
  // this winter the brook runs 0.8 °C warmer than the relation of seven years says
  const warm = (day: number) =>
    0.9 * springs(day) + 0.4 + ownNoise(day) + (between(day, '2025-09-01', '2026-06-30') ? 0.8 : 0);
  const gap = (day: number) => between(day, '2025-12-01', '2026-01-20');
  const target = station('brook', (day) => (gap(day) ? Number.NaN : warm(day)));
  const water = waterAt(asked(target, [station('springs', springs)]));
  const error = daysFrom('2025-12-01', '2026-01-20').map(
    (day) => water.days.mean[day - water.days.firstDay] - warm(day),
  );

  it('meets the measured days at both ends of a filled stretch', () => {
    // without a bridge every day would be 0.8 °C too cold
    expect(Math.abs(meanOf(error.slice(0, 3)))).toBeLessThan(0.3);
    expect(Math.abs(meanOf(error.slice(-3)))).toBeLessThan(0.3);
    expect(Math.abs(meanOf(error))).toBeLessThan(0.4);
  });
});

describe('freezing', () => {
  it('is the floor of every day that was not measured, in every trace', () => {
    const target = station('brook', (day) => (day < dayOf('2025-11-20') ? brook(day) : Number.NaN));
    const water = waterAt(asked(target, [station('weather', air, { kind: 'air' })]));
    const least = Math.min(...water.traces.map((trace) => Math.min(...trace)), ...water.days.mean);
    expect(least).toBe(0);
    // the plateau itself is found, under air of −10 °C and less
    expect(meanOf(cut(water, water.days.mean, '2026-01-05', '2026-02-05'))).toBeLessThan(0.4);
  });
});

describe('a download that has not come yet', () => {
  const target = station('brook', brook, { to: '2025-11-18' });
  const water = waterAt(asked(target, [reporting]));

  it('is filled from the station that reports, all winter to the as-of day, and projected after it', () => {
    const winter = cut(water, water.days.origin, '2025-11-19', '2026-02-15');
    expect(winter).toEqual(winter.map(() => Origin.filled));
    const ahead = cut(water, water.days.origin, '2026-02-16', '2026-07-31');
    expect(ahead).toEqual(ahead.map(() => Origin.projected));
    expect(water.lastMeasured).toBe(dayOf('2025-11-18'));
    expect(water.lastFilled).toBe(dayOf('2026-02-15'));
    expect(water.projection.kind).toBe('own-history');
  });

  it('is nearly what the winter was', () => {
    const error = daysFrom('2025-11-19', '2026-02-15').map(
      (day) => water.days.mean[day - water.days.firstDay] - brook(day),
    );
    expect(Math.sqrt(meanOf(error.map((e) => e * e)))).toBeLessThan(0.45);
  });
});

describe('an air station as the only other one', () => {
  it('fills the water, less surely than a stream does', () => {
    const target = station('brook', brook, { to: '2025-11-18' });
    const byAir = waterAt(asked(target, [station('weather', air, { kind: 'air' })]));
    const byStream = waterAt(asked(target, [reporting]));
    expect(byAir.stretches[0].sources.map((source) => source.station)).toEqual(['weather']);
    expect(byAir.lastFilled).toBe(dayOf('2026-02-15'));
    const spread = (water: typeof byAir) => meanOf(cut(water, water.days.spread, '2025-12-01', '2026-02-15'));
    expect(spread(byStream)).toBeLessThan(spread(byAir));
    const error = daysFrom('2025-11-19', '2026-02-15').map(
      (day) => byAir.days.mean[day - byAir.days.firstDay] - brook(day),
    );
    expect(Math.sqrt(meanOf(error.map((e) => e * e)))).toBeLessThan(1);
  });

  it('a hatchery tank is never asked', () => {
    const target = station('brook', brook, { to: '2025-11-18' });
    const water = waterAt(asked(target, [station('tank', stream, { kind: 'tank' })]));
    expect(water.stretches).toEqual([]);
  });
});

describe('the figures of the regression', () => {
  // winters alone: the days both have are those of November to May
  const inWinter = (day: number) => {
    const month = new Date(day * 86_400_000).getUTCMonth() + 1;
    return month >= 11 || month <= 5;
  };
  const from = dayOf('2018-11-01');
  const y = (day: number) => 0.62 * springs(day) + 1.1 + ownNoise(day);
  const target = station('brook', (day) =>
    inWinter(day) && day < dayOf('2025-11-10') ? y(day) : Number.NaN,
  );
  const neighbour = station('springs', (day) => (inWinter(day) ? springs(day) : Number.NaN));
  const [source] = waterAt(asked(target, [neighbour])).stretches[0].sources;
  const pairs: [number, number][] = [];
  for (let day = from; day < dayOf('2025-09-01'); day++)
    if (inWinter(day)) pairs.push([springs(day), y(day)]);

  it('are those of simple-statistics through the days of past winters that both have', () => {
    const line = linearRegression(pairs);
    expect(source.n).toBe(pairs.length);
    expect(source.slope).toBeCloseTo(line.m, 9);
    expect(source.intercept).toBeCloseTo(line.b, 9);
    expect(source.r2).toBeCloseTo(rSquared(pairs, linearRegressionLine(line)), 9);
  });

  it('name an error of prediction, which is not below what one line leaves by more than seasons can explain', () => {
    const { m, b } = linearRegression(pairs);
    const left = Math.sqrt(meanOf(pairs.map(([x, value]) => (value - m * x - b) ** 2)));
    // the noise was drawn with a standard deviation of 0.25 °C and knows no season
    expect(left).toBeGreaterThan(0.2);
    expect(source.error).toBeGreaterThan(0.9 * left);
    expect(source.error).toBeLessThan(1.3 * left);
  });
});
