import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { DownloadRefused } from '../download.js';
import { lastPart } from './observed.js';
import { type Attributes, attributesOf, isNil, local } from './xml-tag.js';
import { parseOffset } from './xsd-time.js';

/** What a time series says of itself before its first point. */
export interface SeriesHeading {
  /** The monitoring point's identifier, name or address, in this order of trust; null where none is given. */
  readonly station: string | null;
  /** The observed property as it is titled. */
  readonly property: string;
  /** Everything said of the property: title, address, dictionary entry, sampled medium. */
  readonly about: string;
  readonly unit: string | null;
  /** The monitoring point's offset in minutes east of UTC. */
  readonly offset: number | null;
  readonly baseTime: string | null;
  readonly spacing: string | null;
}

/** One time-value pair as it is written; `value` is null where it is declared nil. */
export interface StatedPoint {
  readonly time: string | null;
  readonly value: string | null;
  readonly unit: string | null;
}

export interface SeriesListener {
  open(heading: SeriesHeading): void;
  point(point: StatedPoint): void;
}

interface Named {
  identifier: string | null;
  name: string | null;
  offset: number | null;
}

/** Ours: far above any real document, low enough that no document can fill the memory. */
const DEEPEST = 60;
const LONGEST_PIECE = 1 << 20;
const MOST_NAMES = 20_000;

const FEATURES = new Set(['MonitoringPoint', 'SF_SpatialSamplingFeature', 'SF_SamplingPoint', 'Definition']);
const blank: Named = { identifier: null, name: null, offset: null };

interface Observation {
  property: string;
  about: string[];
  featureTitle: string | null;
  featureAddress: string | null;
  feature: Named | null;
}

const newObservation = (): Observation => ({
  property: '',
  about: [],
  featureTitle: null,
  featureAddress: null,
  feature: null,
});

/**
 * Follows a WaterML 2.0 document (OGC 10-126r4; element names after the published schema waterml/2.0) and tells a
 * listener of each measurement series and its points. Prefixes are ignored: services differ in them. Document type
 * declarations are refused, so no entity can be defined, and no single piece of text may exceed 1 MB.
 */
export class WaterMlSeries {
  private readonly parser = new SaxesParser({ xmlns: false });
  private readonly path: string[] = [];
  private readonly names = new Map<string, Named>();
  private pieceStart = 0;
  private taken = 0;
  private text = '';
  private observation = newObservation();
  private named: Named | null = null;
  private unit: string | null = null;
  private baseTime: string | null = null;
  private spacing: string | null = null;
  private told = false;
  private time: string | null = null;
  private value: string | null = null;
  private nil = false;
  private pointUnit: string | null = null;

  /** An eighth handler would turn the parser into a dictionary and make it five times as slow (Node 20). */
  constructor(private readonly listener: SeriesListener) {
    const parser = this.parser;
    parser.on('opentag', (tag) => this.open(local(tag.name), tag));
    parser.on('closetag', (tag) => this.close(local(tag.name)));
    parser.on('text', (text) => this.addText(text));
    parser.on('cdata', (text) => this.addText(text));
    parser.on('comment', () => this.endPiece());
    parser.on('doctype', () => this.refuseDoctype());
  }

  /** @throws DownloadRefused when the document is not well-formed or breaks a bound */
  write(chunk: string): void {
    this.parse(() => this.parser.write(chunk));
    this.taken += chunk.length;
    if (this.taken - this.pieceStart > LONGEST_PIECE + chunk.length) this.refusePiece();
  }

  /** @throws DownloadRefused when the document ends too soon */
  end(): void {
    this.parse(() => this.parser.close());
  }

  /** Without a handler the parser throws what it finds wrong, as plain errors and no others. */
  private parse(step: () => unknown): void {
    try {
      step();
    } catch (error) {
      if (error instanceof DownloadRefused || Object.getPrototypeOf(error) !== Error.prototype) throw error;
      throw new DownloadRefused({ code: 'waterml.broken', with: { line: this.parser.line } });
    }
  }

  private refuseDoctype(): never {
    throw new DownloadRefused({ code: 'waterml.doctype', with: {} });
  }

  private refusePiece(): never {
    throw new DownloadRefused({ code: 'waterml.too-large', with: { line: this.parser.line } });
  }

  private endPiece(): void {
    this.pieceStart = this.taken;
  }

  private addText(text: string): void {
    this.endPiece();
    this.text += text;
    if (this.text.length > LONGEST_PIECE) this.refusePiece();
  }

  private open(name: string, tag: SaxesTagPlain): void {
    this.endPiece();
    this.text = '';
    const parent = this.path.at(-1) ?? '';
    if (this.path.push(name) > DEEPEST) this.refusePiece();
    // Most elements are points: only where they matter are attributes looked at.
    if (name === 'point' || name === 'time') return;
    if (name === 'MeasurementTVP') this.openPoint();
    else if (name === 'value' && parent === 'MeasurementTVP') this.nil = isNil(tag);
    else if (name === 'MeasurementTimeseries') this.openSeries();
    else if (name === 'OM_Observation') this.observation = newObservation();
    else if (name === 'TimeseriesDomainRange' || name === 'MeasurementDomainRange') this.refuseCoverage();
    else this.openDescribing(name, parent, attributesOf(tag));
  }

  private openDescribing(name: string, parent: string, at: Attributes): void {
    if (FEATURES.has(name)) this.openFeature(at);
    else if (name === 'uom') this.openUnit(parent, at);
    else if (name === 'observedProperty') this.openProperty(at);
    else if (name === 'featureOfInterest') this.openFeatureOfInterest(at);
    else if (name === 'sampledMedium') this.observation.about.push(at.title ?? '', lastPart(at.href ?? ''));
  }

  private refuseCoverage(): never {
    throw new DownloadRefused({ code: 'waterml.coverage', with: {} });
  }

  private openFeature(at: Attributes): void {
    this.named = { ...blank };
    if (at.id !== undefined && this.names.size < MOST_NAMES) this.names.set(at.id, this.named);
    if (this.path.includes('featureOfInterest')) this.observation.feature = this.named;
  }

  private openProperty(at: Attributes): void {
    const entry = at.href?.startsWith('#') ? this.names.get(at.href.slice(1)) : undefined;
    const said = [at.title, entry?.name, entry?.identifier, at.href].filter((part) => part != null);
    this.observation.about.push(...said);
    this.observation.property = lastPart(said[0] ?? '');
  }

  private openFeatureOfInterest(at: Attributes): void {
    const address = at.href ?? null;
    this.observation.featureTitle = at.title ?? null;
    this.observation.featureAddress = address;
    if (address?.startsWith('#')) this.observation.feature = this.names.get(address.slice(1)) ?? null;
  }

  private openSeries(): void {
    this.unit = null;
    this.baseTime = null;
    this.spacing = null;
    this.told = false;
  }

  private openPoint(): void {
    if (!this.told) this.tellSeries();
    this.time = null;
    this.value = null;
    this.nil = false;
    this.pointUnit = null;
  }

  private openUnit(parent: string, at: Attributes): void {
    const unit = at.code ?? at.title ?? at.href ?? null;
    if (parent === 'DefaultTVPMeasurementMetadata') this.unit = unit;
    else if (parent === 'TVPMeasurementMetadata') this.pointUnit = unit;
  }

  private tellSeries(): void {
    this.told = true;
    const { observation } = this;
    const { feature, featureTitle, featureAddress } = observation;
    const ownName = feature?.identifier ?? feature?.name ?? featureTitle ?? featureAddress;
    this.listener.open({
      station: ownName == null || ownName === '' ? null : lastPart(ownName),
      property: observation.property,
      about: observation.about.join(' '),
      unit: this.unit,
      offset: feature?.offset ?? null,
      baseTime: this.baseTime,
      spacing: this.spacing,
    });
  }

  private close(name: string): void {
    this.endPiece();
    this.path.pop();
    const parent = this.path.at(-1) ?? '';
    const { text } = this;
    this.text = '';
    if (parent === 'MeasurementTVP') this.closeInPoint(name, text);
    else if (name === 'MeasurementTVP') this.tellPoint();
    else if (FEATURES.has(parent)) this.closeInFeature(name, text.trim());
    else if (name === 'zoneOffset' && this.named !== null) this.named.offset = parseOffset(text);
    else if (name === 'baseTime') this.baseTime = text.trim();
    else if (name === 'spacing') this.spacing = text.trim();
    else if (FEATURES.has(name)) this.named = null;
  }

  private closeInPoint(name: string, text: string): void {
    if (name === 'time') this.time = text.trim();
    else if (name === 'value') this.value = text.trim();
  }

  private closeInFeature(name: string, text: string): void {
    if (this.named === null || text === '') return;
    if (name === 'identifier') this.named.identifier ??= text;
    else if (name === 'name') this.named.name ??= text;
  }

  private tellPoint(): void {
    this.listener.point({ time: this.time, value: this.nil ? null : this.value, unit: this.pointUnit });
  }
}
