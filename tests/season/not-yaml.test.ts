import { expect, test } from 'vitest';
import { problemsOf, told } from './refused.js';
import { lines } from './yaml.js';

const ZONED = 'group: {name: g, zone: UTC}';

test.each<[string, string, string[]]>([
  ['nothing', '', ['null  season.not-a-season']],
  ['only a comment', '# to do\n', ['null  season.not-a-season']],
  ['a sentence', 'our season 2025\n', ['null  season.not-a-season']],
  [
    'a web page',
    '<!DOCTYPE html>\n<html><head><title>Sign in</title></head></html>\n',
    ['null  season.not-a-season'],
  ],
  ['a list', '- station\n- site\n', ['null  season.not-a-season']],
  ['a picture', 'GIF89a\u0000\u0001\u0000', ['null  season.not-text']],
  ['a tab', lines(ZONED, 'stations:', '\t- id: a'), ['3  season.tab-indent']],
  ['a key twice', lines(ZONED, 'oldRule:', '  base: 0', '  base: 1'), ['4  season.repeated-key']],
  ['two documents', lines(ZONED, '---', ZONED), ['2  season.several-documents']],
  ['an open bracket', lines(ZONED, 'stations: [{id: a}'), ['3  season.not-yaml']],
  ['an open quote', lines(ZONED, 'stations:', '  - id: "a'), ['4  season.not-yaml']],
  ['a second colon', lines('group:', '  name: North: Fork', '  zone: UTC'), ['2  season.not-yaml']],
  [
    'an alias',
    lines('group: &g {name: g, zone: UTC}', 'oldRule: *g'),
    ['1 group season.alias-used', '2 oldRule season.alias-used'],
  ],
  ['an alias to nothing', lines(ZONED, 'oldRule: *g'), ['2 oldRule season.alias-used']],
  ['a typed value', lines('group: {name: !!binary aGVsbG8=, zone: UTC}'), ['1 group.name season.tag-used']],
  ['a program', lines('group: {name: !!js/function "x", zone: UTC}'), ['1 group.name season.tag-used']],
  ['a list as key', lines(ZONED, '? [a, b]', ': c'), ['1  season.key-not-text']],
])('%s is refused', (_, text, expected) => {
  expect(told(text)).toEqual(expected);
});

test('aliases that would unfold into a billion values are refused before they do', () => {
  const levels = Array.from({ length: 12 }, (_, i) => {
    const inside = i === 0 ? 'lol' : Array.from({ length: 10 }, () => `*a${i - 1}`).join(', ');
    return `x${i}: &a${i} [${inside}]`;
  });
  const problems = problemsOf(lines(ZONED, ...levels));
  expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(['season.alias-used']));
});

test('nesting without end is refused, not followed', () => {
  expect(told(`group: ${'['.repeat(20_000)}`)).toEqual(['null  season.too-deep']);
  expect(told(`group: ${'['.repeat(20_000)}${']'.repeat(20_000)}`)).toEqual(['null  season.too-deep']);
  const deep = `group: ${'{a: '.repeat(40)}1${'}'.repeat(40)}\n`;
  expect(problemsOf(deep).map(({ code }) => code)).toEqual(['season.too-deep']);
});

test('a file that is no season by its size is refused unread', () => {
  expect(told(`# ${'x'.repeat(9_000_000)}`)).toEqual(['null  season.too-large']);
});

test('names that programs give a meaning of their own are keys like others', () => {
  expect(told(lines(ZONED, '__proto__: {a: 1}', 'constructor: 1'))).toEqual([
    '2 __proto__ season.unknown-key',
    '3 constructor season.unknown-key',
  ]);
});

test('a file saved in an older encoding is refused, not taken with broken names', () => {
  const windows1252 = Buffer.from(lines('group:', '  zone: UTC', '  name: Les g\u00e9niteurs'), 'latin1');
  expect(told(windows1252.toString('utf8'))).toEqual(['3  season.not-utf8']);
  const utf16 = Buffer.from('\uFEFFgroup: {name: g, zone: UTC}', 'utf16le');
  expect(told(utf16.toString('latin1'))).toEqual(['null  season.not-text']);
});

test('a byte order mark and Windows line ends are no trouble', () => {
  expect(told('\uFEFFgroup:\r\n  name: g\r\n  zone: Nowhere\r\n')).toEqual([
    '3 group.zone season.unknown-zone',
  ]);
});
