import { expect, test } from 'vitest';
import { deviceNamed } from '../../src/pages/sign-in/device.js';
import { speech } from '../../src/pages/speech.js';

test.each([
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0',
    'Firefox sous Windows',
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36 Edg/140.0.0.0',
    'Edge sous Windows',
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.5 Mobile/15E148 Safari/604.1',
    'Safari sur un iPhone',
  ],
  [
    'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36',
    'Chrome sous Android',
  ],
  ['curl/8.5.0', 'curl'],
  ['', 'un navigateur qui ne se nomme pas'],
])('%s', (agent, named) => {
  expect(deviceNamed(speech('fr'), agent)).toBe(named);
});
