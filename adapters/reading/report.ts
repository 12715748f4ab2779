import { type AdapterRemark, DownloadRefused, type DownloadReport } from '../download.js';
import { MINUTE } from '../fields/civil.js';
import { NO_OFFSET } from '../fields/clock-text.js';
import { fixedZone, offsetName } from '../zones/zone.js';
import type { RowReader } from './row-reader.js';

/** Lines of another layout that make a file two files: a stray one is only counted. */
const PASTED_LINES = 3;
const PASTED_SHARE = 0.01;

/** Refuses a file whose rows, all read, turned out to be of no use as a whole. */
export function refuseWhole(reader: RowReader): void {
  const { rows, unusable, plan } = reader;
  const { book } = reader.readings;
  for (const code of ['line-columns-moved', 'line-other-delimiter'] as const) {
    const pasted = unusable.of(code);
    if (pasted !== null && pasted.count >= Math.max(PASTED_LINES, PASTED_SHARE * rows))
      throw new DownloadRefused({ code: 'layout-changes', with: { ...pasted.first } });
  }
  const commonest = unusable.commonest();
  if (commonest !== null && unusable.count * 2 > rows)
    throw new DownloadRefused({
      code: 'mostly-unusable',
      with: { unusable: unusable.count, lines: rows, ...commonest },
    });
  const { readings, outside } = book;
  if (readings === 0) {
    const headers = plan.headers?.filter((header) => header !== '') ?? [];
    throw new DownloadRefused({ code: 'headers-without-readings', with: { headers } });
  }
  if (outside * 2 <= readings && !(plan.unitAssumed && outside > 0.01 * readings)) return;
  const all = book.keys.map((_, i) => book.summary(i));
  const smallest = Math.min(...all.map(({ min }) => min));
  const largest = Math.max(...all.map(({ max }) => max));
  if (plan.unitAssumed)
    throw new DownloadRefused(
      { code: 'no-unit', with: { smallest, largest } },
      { code: 'which-unit', with: {} },
    );
  throw new DownloadRefused({ code: 'not-a-river', with: { outside, readings, smallest, largest } });
}

/** What the zone's changes in the file's span said of its clock. */
function clockRemark(reader: RowReader): AdapterRemark | null {
  const { evidence, habit, all } = reader.stations;
  const clock = all.map((station) => station.clock).find((one) => one?.zone.kind === 'named');
  if (clock === undefined || clock === null || clock.zone.kind !== 'named') return null;
  const zone = clock.zone.name;
  const spanned =
    clock.zone.transitions.between(
      Math.min(clock.firstLocal, clock.lastLocal),
      Math.max(clock.firstLocal, clock.lastLocal),
    ).length > 0;
  if (!spanned) return null;
  if (habit === 'wall') return { code: 'wall-time-shown', with: { zone } };
  const offset = offsetName(clock.keptOffset);
  return evidence.fixed > 0
    ? { code: 'fixed-offset-shown', with: { zone, offset } }
    : { code: 'kept-one-offset', with: { zone, offset } };
}

function countedRemarks({ readings: { book }, missing, plan }: RowReader): AdapterRemark[] {
  const remarks: AdapterRemark[] = [];
  if (missing > 0) remarks.push({ code: 'missing-values', with: { count: missing } });
  if (book.repeated > 0) remarks.push({ code: 'repeated-readings', with: { count: book.repeated } });
  if (book.backSteps > 0 && plan.direction === 1)
    remarks.push({ code: 'time-goes-back', with: { line: book.firstBackStep, times: book.backSteps } });
  return remarks;
}

function zoneOfOffsets(reader: RowReader): string {
  const { firstOffset, offsetsVary } = reader.instant;
  return firstOffset === NO_OFFSET || offsetsVary ? 'UTC' : fixedZone(firstOffset * MINUTE).name;
}

function understoodOf({ plan, unit }: RowReader, zones: ReadonlySet<string>): DownloadReport['understood'] {
  const temperature = plan.values.find(({ quantity }) => quantity === 'temperature');
  const [zone] = zones;
  return {
    encoding: plan.encoding,
    delimiter: plan.delimiter,
    decimal: plan.decimal,
    unit: temperature === undefined ? null : unit,
    zone: zones.size === 1 ? zone : null,
    dateOrder: plan.orderMatters ? plan.order : null,
    timeColumns: plan.time.names,
    valueColumn: (temperature ?? plan.values[0])?.name ?? null,
    daily: plan.daily,
  };
}

/** The report of a file that was read to its end. */
export function reportOf(reader: RowReader): DownloadReport {
  const { plan, unusable, stations } = reader;
  const { book } = reader.readings;
  const offsetZone = zoneOfOffsets(reader);
  const summaries = book.keys.map((_, i) => book.summary(i, offsetZone));
  const clock = clockRemark(reader);
  const assumed: AdapterRemark[] = [...plan.assumed, ...stations.assumed];
  if (reader.instant.offsetsVary) assumed.push({ code: 'offset-in-each-value', with: {} });
  if (clock !== null) assumed.push(clock);
  assumed.push(...countedRemarks(reader));
  return {
    series: book.keys,
    summaries,
    understood: understoodOf(reader, new Set(summaries.map(({ zone }) => zone))),
    assumed,
    unusable: { count: unusable.count, examples: unusable.examples },
    ordered: book.ordered,
    serial: plan.serial,
    battery: reader.battery.reports(),
  };
}
