import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { waterMl } from '../../../adapters/formats/waterml.js';
import { type Asked, DownloadRefused, type Known } from '../../../adapters/index.js';
import { sameReadings } from '../layouts/compare.js';
import { type Expected, knowsNothing, knowsZone } from '../layouts/layout.js';
import { type InventedRecord, invent } from '../layouts/record.js';
import { Collected, type Read, sourceOf } from '../layouts/through.js';
import { throughText } from '../layouts/units.js';
import { nilAt, type WaterMlStyle, writeWaterMl } from '../layouts/write-waterml.js';

const bytes = (text: string, encoding: BufferEncoding = 'utf8'): Uint8Array =>
  new Uint8Array(Buffer.from(text, encoding));

async function readWaterMl(
  document: Uint8Array,
  asked: Asked = {},
  known: Known = knowsNothing,
  chunk = 4093,
): Promise<Read> {
  const sink = new Collected();
  const source = sourceOf(document, 'series.xml', chunk);
  const report = await waterMl.read(() => source.open(), asked, known, sink);
  return { report, got: sink.all() };
}

async function refusal(document: Uint8Array, asked: Asked = {}): Promise<DownloadRefused> {
  const outcome = await readWaterMl(document, asked).catch((error: unknown) => error);
  if (outcome instanceof DownloadRefused) return outcome;
  throw outcome instanceof Error ? outcome : new Error('the document was taken');
}

const namespaces =
  'xmlns:wml2="http://www.opengis.net/waterml/2.0" xmlns:gml="http://www.opengis.net/gml/3.2" xmlns:om="http://www.opengis.net/om/2.0" xmlns:swe="http://www.opengis.net/swe/2.0" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"';

interface Parts {
  readonly property?: string;
  readonly feature?: string;
  readonly metadata?: string;
  readonly unit?: string;
}

const observation = (
  points: string,
  { property, feature, metadata, unit }: Parts = {},
): string => `<wml2:observationMember><om:OM_Observation>
  ${property ?? '<om:observedProperty xlink:title="Water temperature"/>'}
  ${feature ?? '<om:featureOfInterest xlink:href="http://example.org/stations/weir" xlink:title="weir"/>'}
  <om:result><wml2:MeasurementTimeseries gml:id="s">${metadata ?? ''}
  <wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata>${unit ?? '<wml2:uom code="Cel"/>'}</wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>
  ${points}</wml2:MeasurementTimeseries></om:result></om:OM_Observation></wml2:observationMember>`;

const collection = (inside: string): Uint8Array =>
  bytes(`<?xml version="1.0" encoding="UTF-8"?>\n<wml2:Collection ${namespaces}>${inside}</wml2:Collection>`);

const point = (time: string, value: string): string =>
  `<wml2:point><wml2:MeasurementTVP><wml2:time>${time}</wml2:time><wml2:value>${value}</wml2:value></wml2:MeasurementTVP></wml2:point>`;

const one = point('2025-11-20T00:00:00Z', '1.25');

describe('an invented record comes back through WaterML 2.0', () => {
  const styles: fc.Arbitrary<WaterMlStyle> = fc.record({
    zone: fc.constantFrom('UTC', 'UTC-03:30', 'UTC+05:45', 'America/Halifax'),
    unit: fc.constantFrom('C', 'F', 'K'),
    decimals: fc.integer({ min: 1, max: 3 }),
    nilEvery: fc.constantFrom(0, 3, 11),
    offsets: fc.constant('value' as const),
  });
  const expectedOf = (record: InventedRecord, style: WaterMlStyle): Expected[] =>
    record.map((series) => {
      const rows = [...series.at.keys()].filter((i) => !nilAt(i, style));
      return {
        station: series.station,
        quantity: 'temperature',
        span: 'instant',
        at: rows.map((i) => series.at[i]!),
        value: rows.map((i) => throughText(series.value[i]!, style.unit, style.decimals)),
      };
    });

  it('in any unit and zone, over a change of the clocks, in pieces of any size', async () => {
    await fc.assert(
      fc.asyncProperty(
        styles,
        fc.integer({ min: 0, max: 1e9 }),
        fc.integer({ min: 1, max: 9000 }),
        async (style, seed, chunk) => {
          const plan = {
            seed,
            stations: ['weir', 'étang'],
            first: Date.UTC(2025, 10, 1, 12),
            stepMinutes: 30,
            readings: 60,
          };
          const record = invent(plan);
          sameReadings(
            await readWaterMl(writeWaterMl(record, style), {}, knowsNothing, chunk),
            expectedOf(record, style),
          );
        },
      ),
      { numRuns: 40, seed: 9 },
    );
  });

  it('without offsets in the values: the monitoring point’s, else the one asked, else the station’s', async () => {
    const record = invent({
      seed: 4,
      stations: ['weir'],
      first: Date.UTC(2025, 10, 20),
      stepMinutes: 60,
      readings: 50,
    });
    const style: WaterMlStyle = {
      zone: 'UTC-03:30',
      unit: 'C',
      decimals: 2,
      nilEvery: 0,
      offsets: 'monitoring point',
    };
    const document = writeWaterMl(record, style);
    sameReadings(await readWaterMl(document), expectedOf(record, style));
    const silent = bytes(
      Buffer.from(document)
        .toString()
        .replaceAll(/<wml2:timeZone>.*<\/wml2:timeZone>/g, ''),
    );
    sameReadings(await readWaterMl(silent, { zone: 'UTC-03:30' }), expectedOf(record, style));
    sameReadings(await readWaterMl(silent, {}, knowsZone('America/St_Johns')), expectedOf(record, style));
    expect((await refusal(silent)).question?.code).toBe('which-zone');
  });
});

describe('WaterML as services write it', () => {
  it('the values of the schema’s own example: dictionary, feature by reference, numbers in qualifiers left alone', async () => {
    // Values and arrangement: OGC schemas, waterml/2.0/examples/encoding_examples/xsd-collection.xml (seen).
    const qualified = point('2011-11-21T12:30:00+10:00', '10.5').replace(
      '</wml2:MeasurementTVP>',
      '<wml2:metadata><wml2:TVPMeasurementMetadata><wml2:qualifier><swe:Quantity><swe:uom code="m"/><swe:value>95</swe:value></swe:Quantity></wml2:qualifier></wml2:TVPMeasurementMetadata></wml2:metadata></wml2:MeasurementTVP>',
    );
    const document = collection(
      `<wml2:localDictionary><gml:Dictionary gml:id="phenom"><gml:identifier codeSpace="x">codes</gml:identifier><gml:dictionaryEntry><gml:Definition gml:id="t"><gml:name>Temperature</gml:name></gml:Definition></gml:dictionaryEntry></gml:Dictionary></wml2:localDictionary>
       <wml2:samplingFeatureMember><wml2:MonitoringPoint gml:id="mp"><gml:name>Deddington</gml:name></wml2:MonitoringPoint></wml2:samplingFeatureMember>
       ${observation(
         qualified + point('2011-11-21T12:45:35+10:00', '10.5') + point('2011-11-21T13:00:10+10:00', '10.4'),
         {
           property: '<om:observedProperty xlink:href="#t"/>',
           feature: '<om:featureOfInterest xlink:href="#mp" xlink:title="a place"/>',
         },
       )}`,
    );
    const { got } = await readWaterMl(document);
    expect(got).toHaveLength(1);
    expect(got[0]).toMatchObject({
      key: { station: 'Deddington', quantity: 'temperature' },
      at: ['2011-11-21T02:30:00Z', '2011-11-21T02:45:35Z', '2011-11-21T03:00:10Z'].map(Date.parse),
      value: [10.5, 10.5, 10.4],
    });
  });

  it('a nil value stays nil, whatever number its qualifier holds', async () => {
    const nil =
      '<wml2:point><wml2:MeasurementTVP><wml2:time>2025-11-20T01:00:00Z</wml2:time><wml2:value xsi:nil="true">7</wml2:value><wml2:metadata><wml2:TVPMeasurementMetadata><wml2:qualifier><swe:Quantity><swe:value>95</swe:value></swe:Quantity></wml2:qualifier></wml2:TVPMeasurementMetadata></wml2:metadata></wml2:MeasurementTVP></wml2:point>';
    const { got, report } = await readWaterMl(collection(observation(one + nil)));
    expect(got.map(({ value }) => value)).toEqual([[1.25]]);
    expect(report.assumed).toContainEqual({ code: 'missing-values', with: { count: 1 } });
  });

  it('a time series alone, other prefixes, a unit by its address', async () => {
    const document = bytes(
      `<MeasurementTimeseries xmlns="http://www.opengis.net/waterml/2.0" xmlns:g="http://www.opengis.net/gml/3.2" xmlns:x="http://www.w3.org/1999/xlink" g:id="a"><defaultPointMetadata><DefaultTVPMeasurementMetadata><uom x:href="http://www.opengis.net/def/uom/UCUM/0/Cel"/></DefaultTVPMeasurementMetadata></defaultPointMetadata><point><MeasurementTVP><time>2025-11-20T00:00:00Z</time><value>1.25</value></MeasurementTVP></point></MeasurementTimeseries>`,
    );
    const { got } = await readWaterMl(document);
    expect(got[0]).toMatchObject({ key: { station: null, quantity: 'temperature' }, value: [1.25] });
  });

  it('points at equal steps from a base time, without times of their own', async () => {
    const values = ['1.1', '1.2', '1.3'].map(
      (value) =>
        `<wml2:point><wml2:MeasurementTVP><wml2:value>${value}</wml2:value></wml2:MeasurementTVP></wml2:point>`,
    );
    const metadata =
      '<wml2:metadata><wml2:TimeseriesMetadata><wml2:baseTime>2025-11-20T00:00:00-04:00</wml2:baseTime><wml2:spacing>PT15M</wml2:spacing></wml2:TimeseriesMetadata></wml2:metadata>';
    const { got } = await readWaterMl(collection(observation(values.join(''), { metadata })));
    expect(got[0]?.at).toEqual([0, 15, 30].map((minute) => Date.UTC(2025, 10, 20, 4, minute)));
    expect(got[0]?.value).toEqual([1.1, 1.2, 1.3]);
  });

  it('whole days are days of the zone’s standard time', async () => {
    const days = point('2026-06-01', '9.5') + point('2026-06-02', '9.75');
    const { got, report } = await readWaterMl(collection(observation(days)), { zone: 'America/Halifax' });
    expect(got[0]).toMatchObject({
      key: { span: 'day' },
      at: [Date.UTC(2026, 5, 1, 4), Date.UTC(2026, 5, 2, 4)],
    });
    expect(report.understood.daily).toBe(true);
  });

  it('level and discharge in their units, what is neither left alone', async () => {
    const document = collection(
      observation(point('2025-11-20T00:00:00Z', '3'), {
        property: '<om:observedProperty xlink:title="Gage height"/>',
        unit: '<wml2:uom code="[ft_i]"/>',
      }) +
        observation(point('2025-11-20T00:00:00Z', '100'), {
          property: '<om:observedProperty xlink:title="Discharge"/>',
          unit: '<wml2:uom code="ft3/s"/>',
        }) +
        observation(point('2025-11-20T00:00:00Z', '12'), {
          property: '<om:observedProperty xlink:title="Precipitation"/>',
          unit: '<wml2:uom code="mm"/>',
        }),
    );
    const { got, report } = await readWaterMl(document);
    expect(got.map(({ key, value }) => [key.quantity, value[0]])).toEqual([
      ['level', 0.9144],
      ['discharge', 2.831685],
    ]);
    expect(report.understood.unit).toBeNull();
  });

  it('water and air at one station are two series, and a person may want one', async () => {
    const of = (title: string, value: string): string =>
      observation(point('2025-11-20T00:00:00Z', value), {
        property: `<om:observedProperty xlink:title="${title}"/>`,
      });
    const document = collection(of('Water temperature', '1') + of('Air temperature', '-7'));
    const both = await readWaterMl(document);
    expect(both.got.map(({ key, value }) => [key.medium, ...value])).toEqual([
      ['water', 1],
      ['air', -7],
    ]);
    const asked = await readWaterMl(document, { column: 'air temperature' });
    expect(asked.got.map(({ key, value }) => [key.medium, ...value])).toEqual([['air', -7]]);
    expect((await refusal(document, { column: 'Oxygen' })).remark.code).toBe('unknown-column');
  });

  it('two sensors of one kind at one station are asked about', async () => {
    const sensor = (n: number): string =>
      observation(one, { property: `<om:observedProperty xlink:title="Temperature ${n}"/>` });
    const { question } = await refusal(collection(sensor(1) + sensor(2)));
    expect(question).toEqual({ code: 'which-column', with: { columns: ['Temperature 1', 'Temperature 2'] } });
  });

  it('several pieces of one series are one series', async () => {
    const next = point('2025-11-20T01:00:00Z', '1.5');
    const { got } = await readWaterMl(collection(observation(one) + observation(next)));
    expect(got.map(({ value }) => value)).toEqual([[1.25, 1.5]]);
  });

  it('a name the person gives stands for the document’s one station, and is said', async () => {
    const { got, report } = await readWaterMl(collection(observation(one)), { station: 'upper' });
    expect(got[0]?.key.station).toBe('upper');
    expect(report.assumed).toContainEqual({
      code: 'station-asked-not-file',
      with: { asked: 'upper', stated: 'weir' },
    });
    const other = observation(one, { feature: '<om:featureOfInterest xlink:title="ford"/>' });
    expect((await refusal(collection(observation(one) + other), { station: 'upper' })).remark.code).toBe(
      'several-stations',
    );
  });

  it('UTF-16 and Latin-1 documents', async () => {
    const text = Buffer.from(
      collection(observation(one, { feature: '<om:featureOfInterest xlink:title="étang"/>' })),
    ).toString();
    const wide = await readWaterMl(bytes(`\uFEFF${text.replace('UTF-8', 'UTF-16')}`, 'utf16le'));
    const latin = await readWaterMl(bytes(text.replace('UTF-8', 'ISO-8859-1'), 'latin1'));
    expect([wide.got[0]?.key.station, latin.got[0]?.key.station]).toEqual(['étang', 'étang']);
  });
});

describe('a unit that is not stated', () => {
  const unitless = (value: string): Uint8Array =>
    collection(observation(point('2025-11-20T00:00:00Z', value), { unit: '' }));

  it('is °C where the values allow nothing else, and said', async () => {
    const { got, report } = await readWaterMl(unitless('4.5'));
    expect(got[0]?.value).toEqual([4.5]);
    expect(report.assumed.map(({ code }) => code)).toContain('unit-assumed');
  });

  it('is asked for elsewhere, and the answer is taken', async () => {
    expect((await refusal(unitless('41'))).question?.code).toBe('which-unit');
    expect((await readWaterMl(unitless('41'), { unit: 'F' })).got[0]?.value).toEqual([5]);
  });

  it('a stated unit stands against another asked, and that is said', async () => {
    const { got, report } = await readWaterMl(collection(observation(one)), { unit: 'F' });
    expect(got[0]?.value).toEqual([1.25]);
    expect(report.assumed).toContainEqual({ code: 'unit-asked-not-used', with: { asked: 'F', stated: 'C' } });
  });
});

describe('points that cannot be used', () => {
  it('are counted with their number and reason; missing ones are no readings', async () => {
    const points = [
      one,
      point('2025-11-20T00:00:00Z', '9'),
      point('2025-11-20T01:00:00Z', '1.2.3'),
      point('2025-02-30T01:00:00Z', '1'),
      point('2025-11-20T02:00:00Z', '-300'),
      point('2099-01-01T00:00:00Z', '1'),
      point('2025-11-20T03:00:00Z', '-999'),
      point('2025-11-20T04:00:00Z', 'NaN'),
      point('2025-11-20T05:00:00Z', ''),
      ...[6, 7, 8, 9, 10, 11].map((hour) => point(`2025-11-20T${String(hour).padStart(2, '0')}:00:00Z`, '1')),
    ];
    const document = collection(observation(points.join('')));
    const { got, report } = await readWaterMl(document, { notAfter: Date.UTC(2026, 0, 1) });
    expect(got[0]?.value).toEqual([1.25, 1, 1, 1, 1, 1, 1]);
    expect(report.unusable.count).toBe(5);
    expect(report.unusable.examples.map(({ line, reason }) => [line, reason.code])).toEqual([
      [2, 'line-same-instant'],
      [3, 'line-not-a-number'],
      [4, 'line-bad-time'],
      [5, 'line-impossible-value'],
      [6, 'line-after-now'],
    ]);
    expect(report.assumed).toContainEqual({ code: 'missing-values', with: { count: 3 } });
  });

  it('more than half of them refuse the document', async () => {
    const document = collection(observation(one + point('x', '1') + point('y', '2')));
    expect((await refusal(document)).remark.code).toBe('mostly-unusable');
  });
});

it('values no river has in most points refuse the document', async () => {
  const warm = [61, 62, 63].map((value) => point(`2025-11-20T0${value - 61}:00:00Z`, String(value)));
  expect((await refusal(collection(observation(warm.join(''))))).remark.code).toBe('not-a-river');
});

describe('documents that are no WaterML a river needs', () => {
  it.each([
    [
      'a document type declaration',
      `<?xml version="1.0"?><!DOCTYPE c [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><wml2:Collection ${namespaces}>&b;</wml2:Collection>`,
      'waterml.doctype',
    ],
    [
      'an external entity',
      `<?xml version="1.0"?><!DOCTYPE c SYSTEM "file:///etc/passwd"><wml2:Collection ${namespaces}/>`,
      'waterml.doctype',
    ],
    [
      'an entity nobody defined',
      `<wml2:Collection ${namespaces}>&secret;</wml2:Collection>`,
      'waterml.broken',
    ],
    ['a document cut short', `<wml2:Collection ${namespaces}>${observation(one)}`, 'waterml.broken'],
    ['tags that cross', `<wml2:Collection ${namespaces}><a><b></a></b></wml2:Collection>`, 'waterml.broken'],
    [
      'ten thousand elements inside one another',
      `<wml2:Collection ${namespaces}>${'<a>'.repeat(10_000)}`,
      'waterml.too-large',
    ],
    [
      'a text of 3 MB',
      `<wml2:Collection ${namespaces}><a>${'x'.repeat(3e6)}</a></wml2:Collection>`,
      'waterml.too-large',
    ],
    [
      'an attribute of 3 MB',
      `<wml2:Collection ${namespaces}><a b="${'x'.repeat(3e6)}"/></wml2:Collection>`,
      'waterml.too-large',
    ],
    ['a declaration of 3 MB', `<!DOCTYPE c [${'<!ENTITY a "b">'.repeat(2e5)}`, 'waterml.too-large'],
    [
      'times and values apart',
      `<wml2:Collection ${namespaces}><wml2:TimeseriesDomainRange/></wml2:Collection>`,
      'waterml.coverage',
    ],
    ['a collection without series', `<wml2:Collection ${namespaces}></wml2:Collection>`, 'waterml.no-series'],
    [
      'a series without points',
      `<wml2:Collection ${namespaces}>${observation('')}</wml2:Collection>`,
      'waterml.no-series',
    ],
  ])('%s', async (_, document, code) => {
    const { remark, exit } = await refusal(bytes(document));
    expect([remark.code, exit]).toEqual([code, 2]);
  });

  it('nothing but a refusal, whatever is cut, doubled or changed', async () => {
    const record = invent({
      seed: 8,
      stations: ['weir'],
      first: Date.UTC(2025, 10, 20),
      stepMinutes: 60,
      readings: 4,
    });
    const whole = writeWaterMl(record, {
      zone: 'UTC',
      unit: 'C',
      decimals: 2,
      nilEvery: 0,
      offsets: 'value',
    });
    await fc.assert(
      fc.asyncProperty(fc.nat(whole.length - 1), fc.nat(255), fc.boolean(), async (where, byte, cut) => {
        const damaged = cut ? whole.slice(0, where) : whole.slice();
        if (!cut) damaged[where] = byte;
        const outcome = await readWaterMl(damaged).catch((error: unknown) => error);
        expect(outcome instanceof Error ? outcome instanceof DownloadRefused : outcome).toBeTruthy();
      }),
      { numRuns: 300, seed: 10 },
    );
  });
});
