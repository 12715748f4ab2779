import { describe, expect, it } from 'vitest';
import { numberTicks } from '../../src/charts/axes.js';
import { decimal, percent, significant, writtenDay } from '../../src/words/format.js';
import { say } from '../../src/words/index.js';
import { byWhom } from '../../src/words/somebody.js';

describe('figures as they are written', () => {
  it('what rounds to zero has no sign', () => {
    expect(decimal('fr', -0.04, 1)).toBe('0,0');
    expect(decimal('en', -0.3, 1)).toBe('−0.3');
  });

  it('a loss has the minus sign of sentences, not a hyphen', () => {
    expect(significant('fr', -1.27)).toBe('−1,27');
    expect(percent('fr', -0.5)).toBe('−50\u00a0%');
    expect(decimal('en', -1234.5, 1)).toBe('−1,234.5');
  });

  it('the figures of an axis all have the digits that one of them needs, also where a double is a little off', () => {
    const ticks = [-0.2, 0, 0.2, 0.2 * 3, 0.8].map(numberTicks('fr'));
    expect(ticks).toEqual(['−0,2', '0,0', '0,2', '0,6', '0,8']);
    expect([0.25, 0.5].map(numberTicks('en'))).toEqual(['0.25', '0.50']);
  });

  it('a mean outside its interval is told by the end it passes', () => {
    const share = (language: 'en' | 'fr', mean: number, from: number, to: number) =>
      say(language, { code: 'lifting-share', with: { mean, from, to, digits: 1 } });
    expect(share('en', 0.2, 0.1, 0.35)).toBe('20% (10% – 35%)');
    expect(share('en', 0.004, 0, 0)).toBe('0.4% (9 times in 10 at most 0%)');
    expect(share('fr', 0.97, 0.98, 1)).toBe('97\u00a0% (9 fois sur 10, au moins 98\u00a0%)');
  });

  it('a date is written out, anything else stays', () => {
    expect(writtenDay('fr', '2026-10-01')).toBe('1er octobre 2026');
    expect(writtenDay('en', '2026-10-01')).toBe('1 October 2026');
    expect(writtenDay('en', '')).toBe('');
  });

  it('nobody has a dash for a name', () => {
    expect(byWhom('fr', '-')).toBe('quelqu’un');
    expect(byWhom('en', 'Mara Quell')).toBe('Mara Quell');
  });
});
