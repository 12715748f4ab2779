import { describe, expect, it } from 'vitest';
import type { StatedClock } from '../../../adapters/reading/plan.js';
import { clockInHeader, clockInPreamble } from '../../../adapters/sniff/stated-clock.js';

const name = (clock: StatedClock | null) =>
  clock === null ? null : clock.kind === 'zone' ? clock.zone.name : clock.kind;

describe('the header of a time column', () => {
  it.each([
    ['Date Time, GMT-04:00', 'UTC-04:00'],
    ['Date et heure (UTC−03:30)', 'UTC-03:30'],
    ['time_utc', 'UTC'],
    ['Time (UTC+5:45)', 'UTC+05:45'],
    ['Time UTC+5,75', 'UTC+05:45'],
    ['Date/Time (LST)', 'standard'],
    ['Date/Heure (HNL)', 'standard'],
    ['Heure (HNE)', 'UTC-05:00'],
    ['Date Time AST', 'UTC-04:00'],
    ['Timestamp (America/St_Johns)', 'America/St_Johns'],
    ['Date Time', null],
    ['Time (s)', null],
    ['Local time', null],
  ])('%s', (header, zone) => {
    expect(name(clockInHeader(header))).toBe(zone);
  });
});

describe('a line of the preamble', () => {
  it.each([
    ['Time zone: America/Halifax', 'America/Halifax'],
    ['Fuseau horaire;UTC-5', 'UTC-05:00'],
    ['UTC offset (h): -3.5', 'UTC-03:30'],
    ['Décalage UTC : -03:30', 'UTC-03:30'],
    ['Timezone,-04:00', 'UTC-04:00'],
    ['Fuseau : HNA', 'UTC-04:00'],
    ['Time zone = EST', 'UTC-05:00'],
    ['Times are local standard time', 'standard'],
    ['Time zone: Mars/Olympus', 'unknown'],
    ['Time zone: local', null],
    ['Exported 2026-05-01 10:00 UTC-03:00', null],
    ['Clock offset: 3 s', null],
    ['Station: Gué de l’Est', null],
  ])('%s', (line, zone) => {
    expect(name(clockInPreamble(line))).toBe(zone);
  });
});
