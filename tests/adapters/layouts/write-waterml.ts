import { offsetText, wallAt } from './clock.js';
import { encode } from './encode.js';
import type { InventedRecord, InventedSeries } from './record.js';
import type { Unit } from './style.js';
import { fromCelsius, numberText } from './units.js';

/** UCUM codes, as the schema asks. */
const CODES: Record<Unit, string> = { C: 'Cel', F: '[degF]', K: 'K' };

export interface WaterMlStyle {
  readonly zone: string;
  readonly unit: Unit;
  readonly decimals: number;
  /** Every n-th point is declared nil; 0 never. */
  readonly nilEvery: number;
  /** Times with their offset, or without and the monitoring point's zone beside. */
  readonly offsets: 'value' | 'monitoring point';
}

const two = (n: number): string => String(n).padStart(2, '0');

function timeText(at: number, { zone, offsets }: WaterMlStyle): string {
  const wall = wallAt(at, zone);
  const date = `${wall.year}-${two(wall.month)}-${two(wall.day)}`;
  const clock = `${two(wall.hour)}:${two(wall.minute)}:${two(wall.second)}`;
  return `${date}T${clock}${offsets === 'value' ? offsetText(wall.offset) : ''}`;
}

export const nilAt = (i: number, { nilEvery }: WaterMlStyle): boolean => nilEvery > 0 && i % nilEvery === 2;

function point(series: InventedSeries, i: number, style: WaterMlStyle): string {
  const time = `<wml2:time>${timeText(series.at[i]!, style)}</wml2:time>`;
  if (nilAt(i, style)) {
    const why = '<wml2:nilReason xlink:href="http://www.opengis.net/def/nil/OGC/0/missing"/>';
    return `<wml2:point><wml2:MeasurementTVP>${time}<wml2:value xsi:nil="true"/><wml2:metadata><wml2:TVPMeasurementMetadata>${why}</wml2:TVPMeasurementMetadata></wml2:metadata></wml2:MeasurementTVP></wml2:point>`;
  }
  const value = numberText(fromCelsius(series.value[i]!, style.unit), style.decimals);
  return `<wml2:point><wml2:MeasurementTVP>${time}<wml2:value>${value}</wml2:value></wml2:MeasurementTVP></wml2:point>`;
}

function observation(series: InventedSeries, index: number, style: WaterMlStyle): string {
  const offset = offsetText(wallAt(series.at[0]!, style.zone).offset);
  return `  <wml2:observationMember>
    <om:OM_Observation gml:id="observation.${index}">
      <om:procedure xlink:title="thermistor"/>
      <om:observedProperty xlink:href="#temperature" xlink:title="Water temperature"/>
      <om:featureOfInterest>
        <wml2:MonitoringPoint gml:id="point.${index}">
          <gml:identifier codeSpace="urn:x-invented:stations">${series.station}</gml:identifier>
          <gml:name>Invented reach ${index + 1}</gml:name>
          <sams:shape><gml:Point gml:id="place.${index}"><gml:pos>46.25 -66.5</gml:pos></gml:Point></sams:shape>
          <wml2:timeZone><wml2:TimeZone><wml2:zoneOffset>${offset}</wml2:zoneOffset></wml2:TimeZone></wml2:timeZone>
        </wml2:MonitoringPoint>
      </om:featureOfInterest>
      <om:result>
        <wml2:MeasurementTimeseries gml:id="series.${index}">
          <wml2:defaultPointMetadata>
            <wml2:DefaultTVPMeasurementMetadata>
              <wml2:uom code="${CODES[style.unit]}"/>
              <wml2:interpolationType xlink:title="Instantaneous"/>
            </wml2:DefaultTVPMeasurementMetadata>
          </wml2:defaultPointMetadata>
${[...series.at.keys()].map((i) => `          ${point(series, i, style)}`).join('\n')}
        </wml2:MeasurementTimeseries>
      </om:result>
    </om:OM_Observation>
  </wml2:observationMember>
`;
}

/**
 * A WaterML 2.0 collection of point series (OGC 10-126r4; element names and their order after the published schema
 * waterml/2.0 and its own examples).
 */
export function writeWaterMl(record: InventedRecord, style: WaterMlStyle): Uint8Array {
  const document = `<?xml version="1.0" encoding="UTF-8"?>
<wml2:Collection xmlns:wml2="http://www.opengis.net/waterml/2.0" xmlns:gml="http://www.opengis.net/gml/3.2" xmlns:om="http://www.opengis.net/om/2.0" xmlns:sams="http://www.opengis.net/samplingSpatial/2.0" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" gml:id="invented.collection">
  <gml:description>Invented, nothing here was measured</gml:description>
  <wml2:localDictionary>
    <gml:Dictionary gml:id="phenomena">
      <gml:dictionaryEntry><gml:Definition gml:id="temperature"><gml:name>Water temperature</gml:name></gml:Definition></gml:dictionaryEntry>
    </gml:Dictionary>
  </wml2:localDictionary>
${record.map((series, index) => observation(series, index, style)).join('')}</wml2:Collection>
`;
  return encode(document, 'utf-8', false);
}
