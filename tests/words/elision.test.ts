import { expect, test } from 'vitest';
import { words } from '../../src/words/index.js';

test.each([
  ['amont', 'Des lectures d’amont manquent pour de bon'],
  ['Île-aux-Grues', 'Des lectures d’Île-aux-Grues manquent pour de bon'],
  ['Halifax', 'Des lectures d’Halifax manquent pour de bon'],
  ['hameau', 'Des lectures de hameau manquent pour de bon'],
  ['pont', 'Des lectures de pont manquent pour de bon'],
  ['2-est', 'Des lectures de 2-est manquent pour de bon'],
])('French elides before a vowel or a mute h: %s', (station, said) => {
  expect(words('fr', 'letter-gap-head', { station })).toBe(said);
});
