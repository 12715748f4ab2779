import type { AllWords } from '../../words/index.js';
import type { View } from '../view.js';

/**
 * Product tokens of User-Agent (RFC 9110, section 10.1.5) by which browsers are told apart, the more particular first:
 * nearly all say Mozilla, most say Safari, many say Chrome.
 */
const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/\bEdg(?:A|iOS)?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\bSamsungBrowser\//, 'Samsung Internet'],
  [/\b(?:Firefox|FxiOS)\//, 'Firefox'],
  [/\b(?:HeadlessChrome|Chrome|Chromium|CriOS)\//, 'Chrome'],
  [/\bVersion\/[\d.]+ .*\bSafari\//, 'Safari'],
];

const SYSTEMS: readonly (readonly [RegExp, Extract<keyof AllWords, `page-account-on-${string}`>])[] = [
  [/\biPhone\b/, 'page-account-on-iphone'],
  [/\biPad\b/, 'page-account-on-ipad'],
  [/\bAndroid\b/, 'page-account-on-android'],
  [/\bWindows\b/, 'page-account-on-windows'],
  [/\bMac OS X\b/, 'page-account-on-mac'],
  [/\bCrOS\b/, 'page-account-on-chromeos'],
  [/\bLinux\b/, 'page-account-on-linux'],
];

/** The browser and the system of a session in words: "Firefox on Windows"; else the product token it sent, else neither. */
export function deviceNamed({ say }: Pick<View, 'say'>, agent: string): string {
  const known = BROWSERS.find(([token]) => token.test(agent))?.[1];
  const browser = known ?? /^[^\s/]{1,40}/.exec(agent)?.[0] ?? say('page-account-unknown', {});
  const system = SYSTEMS.find(([token]) => token.test(agent))?.[1];
  return system === undefined ? browser : say(system, { browser });
}
