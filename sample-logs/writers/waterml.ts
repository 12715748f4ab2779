import { type Kept, utf8, written } from '../download.js';
import { shown } from './clocks.js';

/** OGC WaterML 2.0: one collection with one point time series of water temperature. */
export function waterml(name: string, kept: readonly Kept[]): Uint8Array {
  const stamp = (at: number) => shown(at, 'UTC-4', "yyyy-MM-dd'T'HH:mm:ssZZ");
  const [first, last] = [kept[0], kept.at(-1)];
  const points = kept.map(
    ({ at, value }) =>
      `<wml2:point><wml2:MeasurementTVP><wml2:time>${stamp(at)}</wml2:time><wml2:value>${written(value, 2)}</wml2:value></wml2:MeasurementTVP></wml2:point>`,
  );
  return utf8(`<?xml version="1.0" encoding="UTF-8"?>
<wml2:Collection xmlns:wml2="http://www.opengis.net/waterml/2.0" xmlns:om="http://www.opengis.net/om/2.0" xmlns:gml="http://www.opengis.net/gml/3.2" xmlns:xlink="http://www.w3.org/1999/xlink" gml:id="brumelore">
  <wml2:metadata><wml2:DocumentMetadata gml:id="about"><wml2:generationDate>${last ? stamp(last.at) : ''}</wml2:generationDate></wml2:DocumentMetadata></wml2:metadata>
  <wml2:observationMember>
    <om:OM_Observation gml:id="observation-1">
      <om:phenomenonTime><gml:TimePeriod gml:id="span"><gml:beginPosition>${first ? stamp(first.at) : ''}</gml:beginPosition><gml:endPosition>${last ? stamp(last.at) : ''}</gml:endPosition></gml:TimePeriod></om:phenomenonTime>
      <om:observedProperty xlink:href="http://example.org/water-temperature" xlink:title="Water temperature"/>
      <om:featureOfInterest xlink:href="http://example.org/${name}" xlink:title="${name}"/>
      <om:result>
        <wml2:MeasurementTimeseries gml:id="series-1">
          <wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata><wml2:uom code="Cel"/><wml2:interpolationType xlink:href="http://www.opengis.net/def/waterml/2.0/interpolationType/Continuous"/></wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>
${points.join('\n')}
        </wml2:MeasurementTimeseries>
      </om:result>
    </om:OM_Observation>
  </wml2:observationMember>
</wml2:Collection>
`);
}
