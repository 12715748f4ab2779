import { describe, expect, test } from 'vitest';
import {
  afterQuiet,
  dueFor,
  lastWeekly,
  nextWeekly,
  pictureOf,
  Recipients,
  urgencyOf,
} from '../../src/messages/index.js';
import { writeLetter } from '../../src/messages/letter.js';
import { temporaryFolder } from '../store/temporary.js';
import { MORNING, person, river, spell } from './river.js';
import { mailSink } from './sink.js';

const ZONE = 'America/Halifax';
const at = (text: string) => Date.parse(text);
const opened = (given = {}) => ({ kind: 'spell', change: 'opened', spell: spell(given) }) as const;

describe('who is told when', () => {
  const quiet = { from: '21:00', to: '07:00' };
  test('quiet hours hold back what can wait, over midnight and over the clock change', () => {
    // Halifax is UTC−4 in winter, −3 from 8 March 2026, 02:00 (tz database).
    expect(afterQuiet({ quiet }, at('2026-01-14T02:30Z'), ZONE)).toBe(at('2026-01-14T11:00Z'));
    expect(afterQuiet({ quiet }, at('2026-01-14T09:30Z'), ZONE)).toBe(at('2026-01-14T11:00Z'));
    expect(afterQuiet({ quiet }, at('2026-01-14T11:00Z'), ZONE)).toBe(at('2026-01-14T11:00Z'));
    expect(afterQuiet({ quiet }, at('2026-03-08T03:00Z'), ZONE)).toBe(at('2026-03-08T10:00Z'));
    expect(afterQuiet({ quiet: { from: '12:00', to: '13:30' } }, at('2026-01-14T16:10Z'), ZONE)).toBe(
      at('2026-01-14T17:30Z'),
    );
    expect(afterQuiet({ quiet: null }, at('2026-01-14T02:30Z'), ZONE)).toBe(at('2026-01-14T02:30Z'));
  });

  test('at night comes only what was measured and kills; what lowers survival comes with the week', () => {
    expect(urgencyOf(opened())).toBe('now');
    expect(urgencyOf(opened({ certainty: 'possible', chance: 0.4 }))).toBe('can-wait');
    expect(urgencyOf({ ...opened(), change: 'ended' })).toBe('can-wait');
    expect(urgencyOf({ ...opened(), change: 'past' })).toBe('can-wait');
    expect(urgencyOf(opened({ kind: 'exposure', severity: 'watch', certainty: 'possible' }))).toBe(
      'can-wait',
    );
    expect(urgencyOf(opened({ severity: 'lowers-survival' }))).toBe('weekly');
    const people = new Recipients(temporaryFolder());
    const ann = people.add(person('Ann', { quiet, weekly: 1 }));
    const night = at('2026-01-14T05:00Z');
    expect(dueFor(ann, opened(), night, ZONE)).toBe(night);
    expect(dueFor(ann, opened({ certainty: 'estimated' }), night, ZONE)).toBe(at('2026-01-14T11:00Z'));
    // The Monday after, 07:00 in Halifax.
    expect(dueFor(ann, opened({ severity: 'lowers-survival' }), night, ZONE)).toBe(at('2026-01-19T11:00Z'));
    const bea = people.add(person('Bea', { subjects: ['lifting'] }));
    expect(dueFor(bea, opened(), night, ZONE)).toBeNull();
  });

  test('the week ends on its day', () => {
    expect(lastWeekly(1, at('2026-01-19T10:59Z'), ZONE)).toBe(at('2026-01-12T11:00Z'));
    expect(lastWeekly(1, at('2026-01-19T11:00Z'), ZONE)).toBe(at('2026-01-19T11:00Z'));
    expect(nextWeekly(7, at('2026-03-07T12:00Z'), ZONE)).toBe(at('2026-03-08T10:00Z'));
  });
});

describe('what a message says', () => {
  const letter = (news: Parameters<typeof writeLetter>[0]['news'], language: 'en' | 'fr' = 'en') =>
    writeLetter({
      language,
      group: 'Tallowmere Brook Keepers',
      name: 'Ann',
      zone: ZONE,
      news,
      weekly: [],
      stationName: (station) => station,
      chart: null,
      link: 'https://eggs.example.org/letters/1',
      unsubscribe: 'https://eggs.example.org/unsubscribe/1',
      pages: 'https://eggs.example.org/',
      messageId: '<1@eggs.example.org>',
    });

  test.each([
    [
      opened({ certainty: 'possible', chance: 0.4 }),
      'Possible lethal spell: freezing, box B1',
      'Épisode létal possible\u00a0: gel, incubateur B1',
    ],
    [
      { ...opened(), change: 'worsened' as const },
      'Worse: lethal spell: freezing, box B1',
      'Plus grave\u00a0: épisode létal\u00a0: gel, incubateur B1',
    ],
    [
      { ...opened(), change: 'withdrawn' as const },
      'Taken back: lethal spell: freezing, box B1',
      'Retiré\u00a0: épisode létal\u00a0: gel, incubateur B1',
    ],
    [
      {
        kind: 'window-moved' as const,
        stage: 'hatch',
        moves: [{ boxes: ['B1', 'B2'], before: 20590, after: 20585 }],
      },
      'The window of hatch moved by up to 5 days earlier (2 boxes)',
      'La fenêtre de l’éclosion s’est déplacée, jusqu’à 5\u00a0jours plus tôt (2\u00a0incubateurs)'.replaceAll(
        '\u00a0',
        ' ',
      ),
    ],
    [
      {
        kind: 'station-silent' as const,
        station: 'pool',
        name: 'The Pool',
        last: MORNING,
        hours: 120,
        usualHours: 72,
      },
      'The Pool has been silent for 5 days',
      'The Pool se tait depuis 5 jours',
    ],
  ])('each kind has its own wording, in both languages (%#)', (news, en, fr) => {
    expect(letter([news]).subject).toBe(`Tallowmere Brook Keepers: ${en}`);
    expect(letter([news], 'fr').subject).toBe(`Tallowmere Brook Keepers\u00a0: ${fr}`);
    for (const said of [letter([news]), letter([news], 'fr')]) {
      expect(said.text).toContain('https://eggs.example.org/letters/1');
      expect(said.html).toContain('https://eggs.example.org/unsubscribe/1');
      expect(said.text.match(/^- /gm)).toHaveLength(3);
    }
  });

  test('markup in a name is text', () => {
    const { html } = letter([opened({ boxes: ['<img src=x onerror=alert(1)>'] })]);
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt;');
  });
});

test('the weekly summary comes once a week, with what lowers survival in it', async () => {
  const sink = await mailSink();
  const { recipients, happened, round } = await river({ mail: { port: sink.port } });
  recipients.add(person('Ann', { weekly: 1 }));
  await round(at('2026-01-14T12:00Z'));
  happened.push({ number: 1, change: 'opened', spell: spell({ severity: 'lowers-survival' }) });
  await round(at('2026-01-15T12:00Z'));
  expect(sink.mails).toEqual([]);
  await round(at('2026-01-19T11:05Z'));
  await round(at('2026-01-19T12:00Z'));
  await round(at('2026-01-25T12:00Z'));
  expect(sink.mails.map((mail) => mail.header('Subject'))).toEqual([
    'Tallowmere Brook Keepers: Freezing, box B1 (and 1 more item)',
  ]);
  expect(sink.mails[0]?.raw).toContain('The week to 14 January 2026');
  await round(at('2026-01-26T11:05Z'));
  expect(sink.mails).toHaveLength(2);
});

test('quiet hours gather what can wait into one message', async () => {
  const sink = await mailSink();
  const { recipients, happened, round } = await river({ mail: { port: sink.port } });
  recipients.add(person('Ann', { quiet: { from: '21:00', to: '07:00' } }));
  const possible = spell({ certainty: 'possible' });
  happened.push({ number: 1, change: 'opened', spell: possible });
  await round(at('2026-01-14T03:00Z'));
  happened.push({ number: 2, change: 'withdrawn', spell: possible });
  await round(at('2026-01-14T06:00Z'));
  expect(sink.mails).toEqual([]);
  await round(at('2026-01-14T11:00Z'));
  expect(sink.mails).toHaveLength(1);
  expect(sink.mails[0]?.header('Subject')).toMatch(/\(and 1 more item\)$/);
});

test('a picture is made of a chart', async () => {
  const png = await pictureOf(
    '<svg xmlns="http://www.w3.org/2000/svg" width="720" height="260" viewBox="0 0 720 260"><rect width="9" height="9"/></svg>',
  );
  // The signature of PNG (W3C PNG specification, section 5.2).
  expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
});
