import type { AutumnCautionWords } from '../../autumn/index.js';
import { decimal, longDay, whole } from '../format.js';

const DAY = 86_400_000;
const degrees = (celsius: number) => `${decimal('en', celsius, 1)} °C`;

export const autumn: { [Code in keyof AutumnCautionWords]: (figures: AutumnCautionWords[Code]) => string } = {
  'autumn-handle-soon': ({ lot, hours, hoursLeft }) =>
    `Lot ${lot} was fertilised ${whole('en', Math.round(hours))} h ago: in about ${whole('en', Math.floor(hoursLeft))} h it comes into the span in which handling kills eggs. Plant it before then, or leave it still until it is eyed.`,
  'autumn-must-not-handle': ({ lot, hours }) =>
    `Lot ${lot} was fertilised ${whole('en', Math.round(hours))} h ago and lies in the span in which handling kills eggs: do not move it. Ask the responsible biologist.`,
  'autumn-temper': ({ transportC, siteC, limit }) =>
    `The transport water is at ${degrees(transportC)} and the site at ${degrees(siteC)}: more than ${degrees(limit)} apart. Let the eggs come slowly to the site’s temperature before they go in.`,
  'autumn-logger-full': ({ logger, full, lifted, memory, interval }) =>
    `Logger ${logger} is full on ${longDay('en', full / DAY)}, before the lifting (${longDay('en', lifted / DAY)}): it holds ${whole('en', memory)} readings, one every ${whole('en', interval)} minutes. Set a longer interval now, or read and restart it before that day.`,
  'autumn-cold-start': ({ siteC, limit }) =>
    `The site is at ${degrees(siteC)}. Eggs that start below ${degrees(limit)} just after fertilisation are lost more often: advice, not an alarm; ask the responsible biologist.`,
};
