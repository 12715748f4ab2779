import { quantile } from 'd3-array';
import { describe, expect, it } from 'vitest';
import {
  type GapRow,
  type HindcastRow,
  summarise,
  summariseGaps,
} from '../../../forecasting/hindcast/index.js';
import { networks } from '../../../forecasting/hindcast/networks.js';

const row = (more: Partial<HindcastRow>): HindcastRow => ({
  case: 'history',
  lead: { month: 12, day: 15 },
  stage: 'hatch',
  station: 'a',
  network: 0,
  winter: 2020,
  fertilised: 18567,
  observed: 170,
  p10: 160,
  p50: 168,
  p90: 180,
  crps: 2,
  reference: { ensemble: 165 },
  ensembleCrps: 4,
  icy: false,
  passed: false,
  winters: 5,
  ...more,
});

describe('the summary of a hindcast', () => {
  const rows = [
    row({}),
    row({ p50: 175, p10: 171, winter: 2021, reference: {}, ensembleCrps: null }),
    row({ p50: Number.POSITIVE_INFINITY, p90: Number.POSITIVE_INFINITY, crps: null, winter: 2022 }),
    row({ observed: null, crps: null, winter: 2023 }),
    row({ lead: { month: 3, day: 1 }, p50: 171, winter: 2020 }),
  ];
  const [december, march] = summarise(rows);

  it('counts what came, what did not and what was not forecast to come', () => {
    expect(december).toMatchObject({
      case: 'history',
      lead: '12-15',
      stage: 'hatch',
      n: 2,
      notReached: 1,
      neverForecast: 1,
    });
    expect(march).toMatchObject({ n: 1, notReached: 0, neverForecast: 0, mae: 1, bias: 1 });
  });

  it('errors are forecast minus observed; a course that never arrives counts in the coverage', () => {
    expect(december.mae).toBe(3.5);
    expect(december.bias).toBe(1.5);
    expect(december.p90).toBeCloseTo(quantile([2, 5], 0.9) ?? Number.NaN, 12);
    expect(december.coverage80).toBeCloseTo(2 / 3, 12);
    expect(december.width80).toBe((20 + 9) / 2);
    expect(december.crps).toBe(2);
  });

  it('a plain method is compared on the winters it answers for', () => {
    expect(december.reference).toEqual({ ensemble: { n: 1, mae: 5, bias: -5, ownMae: 2 } });
    expect(december.ensembleCrps).toEqual({ n: 1, crps: 4, own: 2 });
  });

  it('has standard errors in which one winter of one network counts once', () => {
    const error = (network: number, winter: number, by: number) =>
      row({ network, winter, p50: 170 + by, station: `s${network}` });
    const [found] = summarise([error(0, 2020, 2), error(0, 2020, 2), error(1, 2020, -2), error(0, 2021, -2)]);
    // Sums of departures from the mean 0 by cluster: 4, −2, −2; √(16 + 4 + 4)/4.
    expect(found.standardError.bias).toBeCloseTo(Math.sqrt(24) / 4, 12);
    expect(found.standardError.coverage80).toBe(0);
    expect(summarise([error(0, 2020, 2), error(0, 2020, -1)])[0].standardError.bias).toBeNull();
  });

  it('no row is no figure, never a NaN', () => {
    expect(summarise([])).toEqual([]);
    const [none] = summarise([row({ observed: null, crps: null, ensembleCrps: null })]);
    expect(none).toMatchObject({
      n: 0,
      mae: null,
      bias: null,
      p90: null,
      coverage80: null,
      width80: null,
      crps: null,
    });
    expect(none.reference).toEqual({});
  });
});

describe('networks of stations', () => {
  // A degree of latitude is 111.2 km.
  const at = (km: number | null) => ({
    latitude: km === null ? null : 46 + km / 111.2,
    longitude: km === null ? null : -66,
  });

  it('are chains of stations no further than 25 km apart; those without coordinates are one', () => {
    const of = networks([at(0), at(100), at(20), at(null), at(44), at(71), at(null)]);
    const same = (i: number, j: number) => of[i] === of[j];
    expect([same(0, 2), same(2, 4), same(0, 4), same(3, 6)]).toEqual([true, true, true, true]);
    expect([same(0, 1), same(4, 5), same(0, 3), same(1, 5)]).toEqual([false, false, false, false]);
    expect(networks([])).toEqual([]);
  });
});

describe('the summary of gaps', () => {
  const gap = (more: Partial<GapRow>): GapRow => ({
    days: 7,
    station: 'a',
    winter: 2020,
    from: 18600,
    n: 7,
    squares: 7,
    covered: 6,
    width: 10,
    line: { n: 7, own: 7, plain: 28 },
    bestNeighbour: { n: 0, own: 0, plain: 0 },
    shared: { n: 0, squares: 0, covered: 0, width: 0, line: 0, bestNeighbour: 0 },
    icy: false,
    ...more,
  });

  it('is a root mean square over all days, beside the plain methods on the same days', () => {
    expect(
      summariseGaps([gap({}), gap({ squares: 21, covered: 5 }), gap({ days: 30, n: 30, squares: 30 })]),
    ).toMatchObject([
      {
        days: 7,
        n: 14,
        rmse: Math.sqrt(2),
        coverage80: 11 / 14,
        reference: {
          line: { n: 14, rmse: 2, ownRmse: 1 },
          bestNeighbour: { n: 0, rmse: null, ownRmse: null },
        },
      },
      { days: 30, n: 30, rmse: 1 },
    ]);
  });

  it('is on the days both plain methods have an answer for, where there are any; all days stand beside it', () => {
    const shared = { n: 2, squares: 2, covered: 1, width: 3, line: 8, bestNeighbour: 18 };
    const neighbour = { n: 3, own: 4, plain: 30 };
    expect(summariseGaps([gap({ shared, bestNeighbour: neighbour }), gap({ squares: 63 })])).toEqual([
      {
        days: 7,
        n: 2,
        rmse: 1,
        coverage80: 0.5,
        width80: 1.5,
        all: { n: 14, rmse: Math.sqrt(5), coverage80: 12 / 14, width80: 20 / 14 },
        reference: {
          line: { n: 2, rmse: 2, ownRmse: 1 },
          bestNeighbour: { n: 2, rmse: 3, ownRmse: 1 },
        },
      },
    ]);
  });
});
