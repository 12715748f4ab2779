import { describe, expect, it } from 'vitest';
import { readHeader } from '../../../adapters/sniff/header.js';
import { dischargeFactor, levelFactor, temperatureUnit } from '../../../adapters/sniff/unit-text.js';

describe('what a header says', () => {
  it.each([
    ['Date Time, GMT-04:00', 'time'],
    ['Horodatage', 'time'],
    ['Date/Heure (HNL)', 'time'],
    ['datetime', 'time'],
    ['Temp flag', 'left'],
    ['Temp. Indicateur', 'left'],
    ['69928_00010_cd', 'left'],
    ['#', 'left'],
    ['Battery (V)', 'left'],
    ['Hum. rel. (%)', 'left'],
    ['Dew Point Temp (°C)', 'other-temperature'],
    ['Point de rosée (°C)', 'other-temperature'],
    ['Refroid. éolien', 'other-temperature'],
    ['DJC (°C)', 'other-temperature'],
    ['Internal temperature (°C)', 'other-temperature'],
    ['site_no', 'station'],
    [' ID', 'station'],
    ['Nom de la station', 'station'],
    ['Climate ID', 'station'],
    ['Latitude (y)', 'latitude'],
    ['Longitude (x)', 'longitude'],
    ['tz_cd', 'zone'],
    ['Unité', 'unit'],
    ['Pont Bleu', 'unknown'],
  ])('%s: %s', (header, role) => {
    expect(readHeader(header).role).toBe(role);
  });

  it.each([
    ['Temperature (°C)', null, null, 'C'],
    ['Water Temp, °F', 'water', null, 'F'],
    ["Température de l'eau (°C)", 'water', null, 'C'],
    ['Temp. air', 'air', null, null],
    ['water_c', 'water', null, 'C'],
    ['air_c', 'air', null, 'C'],
    ['Temp moy.(°C)', null, 'mean', 'C'],
    ['Max Temp (°C)', null, 'max', 'C'],
    ['temp_min', null, 'min', null],
    ['wtemp', 'water', null, null],
    ['Temperature [K]', null, null, 'K'],
    ['301928_00010_00003', 'water', 'mean', 'C'],
    ['301928_00020', 'air', null, 'C'],
  ])('%s is a temperature', (header, medium, statistic, unit) => {
    expect(readHeader(header)).toMatchObject({
      role: 'value',
      quantity: 'temperature',
      medium,
      statistic,
      unit,
    });
  });

  // The foot is 0.3048 m exactly (international yard and pound agreement, 1959).
  it.each([
    ["Water Level / Niveau d'eau (m)", 'level', 1],
    ['Niveau (cm)', 'level', 0.01],
    ['Gauge height (ft)', 'level', 0.3048],
    ['12_00065', 'level', 0.3048],
    ['Discharge / Débit (cms)', 'discharge', 1],
    ['Débit (L/s)', 'discharge', 0.001],
    ['Streamflow, cfs', 'discharge', 0.028316846592],
    ['12_00060', 'discharge', 0.028316846592],
    ['Water level', 'level', null],
  ])('%s is a %s', (header, quantity, factor) => {
    const says = readHeader(header);
    expect(says).toMatchObject({ role: 'value', quantity });
    if (factor === null) expect(says.factor).toBeNull();
    else expect(says.factor).toBeCloseTo(factor, 15);
  });

  it('takes depths of rain and snow for no level', () => {
    expect(readHeader('Hauteur de précip. (mm)').quantity).not.toBe('level');
    expect(readHeader('Neige au sol (cm)').role).not.toBe('value');
  });
});

describe('units in text', () => {
  it.each([
    ['Temp (?C)', 'C'],
    ['Unité : degrés Celsius', 'C'],
    ['deg F', 'F'],
    ['tempF', 'F'],
    ['temp_c', 'C'],
    ['Temperature', null],
    ['Time (s)', null],
    ['Comment', null],
    ['Record', null],
  ])('%s', (text, unit) => {
    expect(temperatureUnit(text)).toBe(unit);
  });

  it('states no level or discharge without its unit', () => {
    expect(levelFactor('Level')).toBeNull();
    expect(dischargeFactor('Flow')).toBeNull();
  });
});
