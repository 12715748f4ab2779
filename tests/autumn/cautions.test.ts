import { describe, expect, test } from 'vitest';
import { shippedTables } from '../../forecasting/index.js';
import { blockedDays, handling, plantingCautions } from '../../src/autumn/index.js';
import { permitEntries } from '../../src/http/calendar/events.js';
import { seasonFrom } from '../../src/season/index.js';

const salmon = shippedTables.find(({ id }) => id === 'atlantic-salmon');
if (salmon === undefined) throw new Error('the Atlantic salmon table is shipped');

const season = (permits: readonly object[] = [], sites: readonly object[] = [{ id: 'pool' }]) =>
  seasonFrom(
    {
      group: { name: 'Test', zone: 'UTC-04:00' },
      sites,
      permits,
      lots: [{ id: 'A', fertilised: '2025-11-04 10:00', eggs: 1200, table: 'atlantic-salmon' }],
    },
    'test',
  );
const hoursAfter = (hours: number) => Date.parse('2025-11-04T10:00-04:00') + hours * 3_600_000;

describe('hours since fertilisation', () => {
  // Crisp 1981 (memory): 500 to 550 degree-days; at 6 °C D = 10^(5.1908 − 2.6562 log10 17) = 83.6 d, and the span in
  // which handling kills begins at 0.05 of the way (ours, after Crisp 1990, abstract): 4.18 d, 100 h.
  test('at 6 °C the span begins after about four days', () => {
    const days = 10 ** (5.1908 - 2.6562 * Math.log10(17));
    expect(handling(salmon, 6, 0).hoursLeft).toBeCloseTo(0.05 * days * 24, 6);
    expect(handling(salmon, 6, 10).state).toBe('may');
    expect(handling(salmon, 6, 90).state).toBe('soon');
    expect(handling(salmon, 6, 120).state).toBe('must-not');
    expect(handling(salmon, 6, 0.5 * days * 24 + 1).state).toBe('past');
  });

  test('a person is warned before the span, and told within it', () => {
    const at = (hours: number) =>
      plantingCautions(season(), shippedTables, {
        lot: 'A',
        at: hoursAfter(hours),
        transportC: 6,
        siteC: 6,
      }).map(({ code }) => code);
    expect(at(5)).toEqual([]);
    expect(at(90)).toEqual(['autumn-handle-soon']);
    expect(at(200)).toEqual(['autumn-must-not-handle']);
  });
});

describe('before planting', () => {
  const cautions = (transportC: number | null, siteC: number | null) =>
    plantingCautions(season(), shippedTables, { lot: 'A', at: hoursAfter(4), transportC, siteC }).map(
      ({ code }) => code,
    );
  test('a group’s own table may set its own limit', () => {
    const own = { ...salmon, temper: { limit: 4, sources: [] } };
    const heard = plantingCautions(season(), [own], {
      lot: 'A',
      at: hoursAfter(4),
      transportC: 9,
      siteC: 5.5,
    });
    expect(heard).toEqual([]);
  });
  test('transport and site more than 2 °C apart: temper', () => {
    expect(cautions(8, 6)).toEqual([]);
    expect(cautions(8.1, 6)).toEqual(['autumn-temper']);
  });
  // Peterson, Spinney & Sreedharan 1977 (abstract): more than 20 % die when started below 4 °C.
  test('a site colder than the table advises just after fertilisation is said', () => {
    expect(cautions(4, 3)).toEqual(['autumn-cold-start']);
    expect(cautions(4, 4)).toEqual([]);
    expect(cautions(null, null)).toEqual([]);
  });
});

describe('permits', () => {
  const permit = { number: 'P-1', from: '2025-11-01', to: '2025-11-30' };
  const other = { number: 'P-2', from: '2026-06-01', to: '2026-06-20' };
  test('their last day and the day a report is due stand in the calendar, in both languages', () => {
    const due = season([{ ...permit, authority: 'The agency', reportDue: '2026-01-15' }]);
    const said = (language: 'en' | 'fr') => JSON.stringify(permitEntries(due, language));
    expect(permitEntries(due, 'en')).toHaveLength(2);
    expect(said('en')).toContain('Report on permit P-1 is due');
    expect(said('en')).toContain('The agency');
    expect(said('fr')).toContain('Rapport attendu sur le permis P-1');
    expect(permitEntries(season([permit]), 'en')).toHaveLength(1);
  });
  test('days outside every permit are blocked', () => {
    expect(blockedDays(season(), '2025-10-25', '2026-06-30')).toEqual([]);
    const blocked = blockedDays(season([other, permit]), '2025-10-25', '2026-06-30');
    expect(blocked.map(({ from, to, site }) => [from, to, site])).toEqual([
      ['2025-10-25', '2025-10-31', null],
      ['2025-12-01', '2026-05-31', null],
      ['2026-06-21', '2026-06-30', null],
    ]);
  });
  test('a permit for one site leaves the others blocked', () => {
    const sites = [{ id: 'pool' }, { id: 'ford' }];
    const blocked = blockedDays(season([{ ...permit, site: 'pool' }], sites), '2025-11-10', '2025-11-12');
    expect(blocked).toMatchObject([{ from: '2025-11-10', to: '2025-11-12', site: 'ford' }]);
  });
});
