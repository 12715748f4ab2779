import type { QualityWords } from '../../quality/words.js';
import { dayAndTime, decimal, longDay, percent, whole } from '../format.js';

const d = (value: number | undefined, digits = 1) => decimal('en', value ?? Number.NaN, digits);
const n = (value: number | undefined) => whole('en', value ?? 0);
const counted = (count: number | undefined, one: string, more: string) =>
  count === 1 ? `one ${one}` : `${n(count)} ${more}`;
const added = (quantity: 'temperature' | 'clock', add: number) =>
  quantity === 'temperature'
    ? `${add > 0 ? '+' : '−'}${d(Math.abs(add), 2)} °C`
    : `${add > 0 ? '+' : '−'}${clockTime(Math.abs(add))}`;
const clockTime = (ms: number) => (ms < 5_400_000 ? `${n(ms / 60_000)} min` : `${d(ms / 3_600_000, 2)} h`);
/** A terminal knows no zone of the group: its moments are in UTC, and say so. */
const moment = (at: number, zone: string) => `${dayAndTime('en', at, zone)}${zone === 'UTC' ? ' UTC' : ''}`;
const batteryFigure = (value: number, unit: 'V' | '%' | null) =>
  unit === '%' ? `${d(value, 0)}%` : `${d(value, 2)} V`;
const flags: Readonly<Record<number, string>> = {
  1: 'for information',
  2: 'for information',
  3: 'suspect, still used',
  4: 'fails, not used',
  9: 'missing',
};
const verdict = { good: 'good', suspect: 'suspect', fail: 'not usable' } as const;

/** The checks on readings in English. */
export const quality: { [Code in keyof QualityWords]: (words: QualityWords[Code]) => string } = {
  'check-gross-range': () => 'Gross range',
  'check-climatology': () => 'Usual for the season',
  'check-spike': () => 'Spike',
  'check-rate-of-change': () => 'Rate of change',
  'check-flat-line': () => 'Flat line',
  'check-neighbour': () => 'Beside its neighbours',
  'check-in-air': () => 'In air',
  'check-in-snow': () => 'In snow or slush',
  'check-frozen-in': () => 'Frozen in?',
  'check-sheltered': () => 'Buried or sheltered',
  'check-battery': () => 'Battery',
  'check-clock': () => 'Clock',
  'check-outside-deployment': () => 'Before it was placed or after it was taken out',
  'check-ice-bath-bias': () => 'Ice bath',
  'check-plateau-bias': () => 'Bias at the freezing plateau',
  'check-memory': () => 'Memory',
  'finding-gross-range': ({ figures, unit }) =>
    `${counted(figures.readings, 'reading', 'readings')} from ${d(figures.least, 2)} to ${d(figures.most, 2)} ${unit}: outside ${d(figures.low)} to ${d(figures.high)} ${unit}.`,
  'finding-climatology': ({ figures, unit }) =>
    `The day's mean was ${d(figures.mean)} ${unit}; in ${n(figures.years)} other years days of this season lay between ${d(figures.low)} and ${d(figures.high)}. More than ${d(figures.margin)} beyond that is doubted.`,
  'finding-spike': ({ figures, unit }) =>
    `A reading of ${d(figures.value, 2)} ${unit} stands ${d(Math.abs(figures.off ?? 0), 2)} off the mean of the two beside it; the limit is ${d(figures.limit)}.`,
  'finding-rate-of-change': ({ figures, unit }) =>
    `It changed by ${d(figures.change, 2)} ${unit} in ${n(figures.minutes)} minutes: more than three standard deviations of the 25 hours before, and more than ${d(figures.floor)} an hour.`,
  'finding-flat-line': ({ figures, unit, flag }) =>
    `${n(figures.readings)} readings in a row (${d(figures.hours, 0)} h) are ${d(figures.value, 2)} ${unit}; at the resolution of this record ${n(figures.count)} in a row ${flag === 4 ? 'fail' : 'are suspect'}.`,
  'finding-neighbour': ({ figures, unit }) =>
    figures.step === undefined
      ? `For ${n(figures.days)} days it stands ${d(figures.off, 1)} ${unit} off what ${counted(figures.neighbours, 'neighbour says', 'neighbours say')}; up to ${d(figures.limit, 1)} was seen in other years. The sensor may have drifted, or the water here is another.`
      : `From one reading to the next it stepped by ${d(figures.step, 1)} ${unit} and stayed there (${d(figures.off, 1)}), while the neighbours made no step. The sensor may have slipped.`,
  'finding-in-air': ({ figures, unit }) =>
    `For ${n(figures.hours)} hours it swung by ${d(figures.swing)} ${unit} a day (usual here: ${d(figures.usual)}), from ${d(figures.low)} to ${d(figures.high)}, as air does and water does not. The logger probably lay out of the water.`,
  'finding-in-snow': ({ figures, unit }) =>
    `For ${n(figures.hours)} hours it was as cold as ${d(figures.low, 2)} ${unit} and followed the air, late and weakened (${percent('en', figures.share ?? 0)} of its change): as under snow or in slush above the water.`,
  'finding-frozen-in': ({ figures, unit }) =>
    `For ${n(figures.hours)} hours it stayed below ${d(figures.limit)} ${unit}, down to ${d(figures.low, 2)}, hardly moving; flowing water does not get that cold. It probably lay in ice or slush.${(figures.freezing ?? 0) >= 1 ? ` ${counted(figures.freezing, 'hour', 'hours')} at −0.7 or below: what lies beside it may have frozen.` : ''}${Math.abs(figures.zero ?? 0) >= 0.03 ? ` Measured from ${d(figures.zero, 2)}, which this logger shows in water at 0 °C.` : ''}`,
  'finding-sheltered': ({ figures }) =>
    `For ${n(figures.days)} days its daily swing was ${percent('en', figures.share ?? 0)} of the neighbours'; usually it is ${percent('en', figures.usual ?? 0)}. It may be buried in gravel, or lie in still water.`,
  'finding-battery': ({ figures }) =>
    [
      ...(figures.missing === undefined
        ? []
        : [
            `${percent('en', figures.missing)} of the readings of the last ${n(figures.days)} days are missing, more and more of them, after a record that was whole: the battery may be dying.`,
          ]),
      ...(figures.last === undefined
        ? figures.missing === undefined || figures.remark === 1
          ? []
          : ['The files say nothing of the battery: it is told by what is missing only.']
        : [
            figures.percent === 1
              ? `The battery had ${d(figures.last, 0)}% left when the file was read; ${d(figures.limit, 0)}% and less is low.`
              : `The battery was last at ${d(figures.last, 2)} V, its highest ${d(figures.highest, 2)} V; below ${percent('en', figures.limit ?? 0)} of that is low.`,
          ]),
      ...(figures.remark === 1 ? ['A remark in the file calls it low.'] : []),
      ...(figures.early === undefined
        ? []
        : [`The record stops ${counted(figures.early, 'day', 'days')} before the logger was taken out.`]),
      ...(figures.missing === undefined
        ? ['Its readings are not doubted for that. Change the battery before it is laid again.']
        : []),
    ].join(' '),
  'finding-clock': ({ figures }) =>
    figures.change === 1
      ? `From here on its day comes ${d(Math.abs(figures.hours ?? 0), 2)} h ${(figures.hours ?? 0) > 0 ? 'later' : 'earlier'} than before, beside its neighbours: the clock jumped.`
      : figures.change === 2
        ? `Over this stretch its day moved by ${d(Math.abs(figures.hours ?? 0), 2)} h, ${(figures.hours ?? 0) > 0 ? 'later' : 'earlier'}, beside its neighbours: the clock drifted.`
        : `Its day comes ${d(Math.abs(figures.hours ?? 0), 1)} h ${(figures.hours ?? 0) > 0 ? 'later' : 'earlier'} than that of ${counted(figures.neighbours, 'neighbour', 'neighbours')}: the clock may keep another zone.`,
  'finding-outside-deployment': ({ figures, unit }) =>
    `A step of ${d(Math.abs(figures.step ?? 0))} ${unit} within two hours ${figures.after === 1 ? 'near the end of the record' : 'near its beginning'}: ${d(figures.hours, 0)} hours beyond it are probably not of the water. The season does not say when the logger was ${figures.after === 1 ? 'taken out' : 'put in'}.`,
  'finding-ice-bath-bias': ({ figures }) =>
    `In melting ice it showed ${[
      ...(figures.before === undefined ? [] : [`${d(figures.before, 2)} °C before`]),
      ...(figures.after === undefined ? [] : [`${d(figures.after, 2)} °C after`]),
    ].join(
      ' and ',
    )}; that is taken off its readings.${figures.drift === undefined ? '' : ` It drifted by ${d(figures.drift, 2)} °C in between, ${Math.abs(figures.drift) > (figures.accuracy ?? 0) ? 'more' : 'not more'} than its stated accuracy of ${d(figures.accuracy, 2)} °C.`}`,
  'finding-plateau-bias': ({ figures, flag }) =>
    `Under the ice, where the water stands at 0 °C, it showed ${d(figures.bias, 2)} °C on ${n(figures.days)} days: ${flag === 3 ? 'beyond' : 'within'} its stated accuracy of ${d(figures.accuracy, 2)} °C.`,
  'finding-memory': ({ figures }) =>
    `Its memory of ${n(figures.memory)} readings is full on ${longDay('en', (figures.full ?? 0) / 86_400_000)}, at one every ${n(figures.interval)} minutes: before the lifting (${longDay('en', (figures.lifted ?? 0) / 86_400_000)}). Read and restart it before, or set a longer interval.`,
  'check-source-gross-range': () =>
    'Test of the QARTOD manual for in-situ temperature (IOOS); limits for this kind of station: ours.',
  'check-source-climatology': () => 'Test of the QARTOD manual; season of 31 days and margin: ours.',
  'check-source-spike': () => 'Test of the QARTOD manual; limits: ours.',
  'check-source-rate-of-change': () =>
    'Test of the QARTOD manual with its three deviations of 25 hours, which suspects only; least rate: ours.',
  'check-source-flat-line': () =>
    'Test of the QARTOD manual (3 equal suspect, 5 fail), counts raised where the resolution is coarse; the ice plateau, ±0.3 °C, is spared: ours.',
  'check-source-neighbour': () => 'Suggested test of the QARTOD manual; limits: ours.',
  'check-source-in-air': () =>
    'Ours: flowing water supercools by at most about 0.04 °C (Osterkamp et al. 1983).',
  'check-source-in-snow': () =>
    'Ours: flowing water supercools by at most about 0.04 °C (Osterkamp et al. 1983).',
  'check-source-frozen-in': () =>
    'Bands ours (−0.2 and −0.7 °C): flowing water supercools by at most about 0.04 °C (Osterkamp et al. 1983).',
  'check-source-sheltered': () => 'Ours.',
  'check-source-battery': () =>
    'Ours; end voltages of cells (2.0 of 3.6 or 3.0 V lithium, 0.9 of 1.5 V alkaline, 10.5 of 12 V lead) and 20% of charge: common practice.',
  'check-source-clock': () => 'Ours: cross-correlation of the daily swing with the neighbours, in hours.',
  'check-source-outside-deployment': () => 'Ours: a step that water does not make.',
  'check-source-ice-bath-bias': () => 'Common practice: melting ice is at 0 °C.',
  'check-source-plateau-bias': () => 'Ours: a river under ice stands at 0 °C for weeks, a free calibration.',
  'check-source-memory': () => 'Computed from the memory and interval that the season states.',
  'battery-said': ({ station, unit, highest, lowest, last, low, zone }) =>
    [
      ...(last === null || lowest === null || highest === null
        ? [`Battery at ${station}.`]
        : [
            `Battery at ${station}: last ${batteryFigure(last.value, unit)} (${moment(last.at, zone)}), lowest ${batteryFigure(lowest.value, unit)} (${moment(lowest.at, zone)}), highest ${batteryFigure(highest.value, unit)}.`,
          ]),
      ...(low === null ? [] : [`The file calls it low: “${low.text}” (${moment(low.at, zone)}).`]),
    ].join(' '),
  'quality-still-looking': () =>
    'The checks are still looking at earlier years of what was loaded: until they have, dates and spells may change.',
  'quality-title': () => 'What the checks say',
  'quality-answer': ({ doubted, ruled, offered }) =>
    [
      doubted === 0
        ? 'The checks doubt nothing here.'
        : `The checks doubt ${counted(doubted, 'stretch', 'stretches')}.`,
      ...(ruled === 0 ? [] : [`${counted(ruled, 'finding was', 'findings were')} overruled.`]),
      ...(offered === 0 ? [] : [`${counted(offered, 'correction is', 'corrections are')} offered.`]),
    ]
      .map((sentence) => sentence.charAt(0).toUpperCase() + sentence.slice(1))
      .join(' '),
  'quality-none': () => 'The checks found nothing to say about this record.',
  'quality-more': ({ more }) => `${n(more)} more are in the JSON.`,
  'quality-flag': ({ flag }) => flags[flag] ?? '',
  'quality-span': ({ from, to, zone }) => `${dayAndTime('en', from, zone)} to ${dayAndTime('en', to, zone)}`,
  'quality-ruled': (ruling) =>
    `${ruling.by} ruled these readings ${verdict[ruling.verdict]} on ${dayAndTime('en', ruling.at, ruling.zone)}: ${ruling.reason}`,
  'quality-verdict': () => 'These readings are',
  'quality-verdict-good': () => 'good: the check is wrong',
  'quality-verdict-suspect': () => 'suspect, but used',
  'quality-verdict-fail': () => 'not to be used',
  'quality-reason': () => 'Reason',
  'quality-overrule': () => 'Overrule',
  'quality-overrule-save': () => 'Overrule this check',
  'quality-ruling-withdraw': () => 'Withdraw the ruling',
  'quality-offer': ({ quantity, add, course }) =>
    quantity === 'temperature'
      ? `Correction offered: ${added(quantity, add)} to this logger's readings.`
      : `Correction offered: ${added(quantity, add)} to this logger's clock${course === 'rising' ? ', growing from nothing over this stretch' : ' from here on'}.`,
  'quality-offer-accept': () => 'Accept the correction',
  'quality-offer-no-logger': () =>
    'It can be accepted once the season names the logger that lay here then (a deployment).',
  'quality-fills': ({ day }) => `its memory will be full on ${longDay('en', day)}`,
  'quality-corrections': () => 'Corrections accepted',
  'quality-correction': ({ logger, quantity, add, course, by, at, zone }) =>
    `${logger}: ${added(quantity, add)} to ${quantity === 'clock' ? 'its clock' : 'its readings'}${course === 'rising' ? ', growing' : ''}; accepted by ${by} on ${dayAndTime('en', at, zone)}.`,
  'quality-undo': () => 'Undo like any change of the season',
  'quality-kept': () => 'No reading is ever deleted: a finding only says whether it is used.',
  'quality-no-finding': ({ station, finding }) =>
    `There is no finding ${finding} at ${station} (any more): look at the station's page again.`,
  'quality-nothing-offered': ({ finding }) => `The check offers no correction for ${finding}.`,
  'quality-no-deployment': ({ station }) =>
    `The season names no logger that lay at ${station} then: a correction belongs to a deployment. Add it first.`,
  'quality-no-reason': () => 'Say why the check is overruled: the reason stays beside the ruling.',
  'quality-no-ruling': ({ station, finding }) => `Nobody has ruled on ${finding} at ${station}.`,
  'cli-checks': () => 'what the quality checks say of the readings',
  'cli-checks-station': () => 'one station; every station where it is left out',
};
