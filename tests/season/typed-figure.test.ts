import { expect, it } from 'vitest';
import { typedFigure } from '../../src/season/index.js';

it.each([
  ['6 000', '6000'],
  ['6\u00a0000', '6000'],
  ['1\u202f250,5', '1250.5'],
  [' 4,5 ', '4.5'],
  ['−0,3', '-0.3'],
  ['12', '12'],
])('a form takes %j for %s', (given, meant) => {
  expect(typedFigure(given)).toBe(meant);
});

it.each(['6 00', '1 2 3', '13,000,000', 'six'])('%j stays as given, for the season to refuse', (given) => {
  expect(typedFigure(given)).toBe(given);
});
