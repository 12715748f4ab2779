import type { ThingName } from '../../season/index.js';

/** What the things a season lists are called. */
export const things: Record<ThingName, string> = {
  group: 'group',
  station: 'station',
  logger: 'logger',
  deployment: 'deployment',
  site: 'site',
  broodstock: 'broodstock',
  lot: 'lot',
  box: 'box',
  visit: 'visit',
  observed: 'observed stage',
  blocked: 'blocked days',
  putBack: 'box checked and put back',
  tally: 'tally',
  permit: 'permit',
  ruling: 'ruling on a check',
  cross: 'cross',
  entry: 'entry',
  table: 'development table',
  layout: 'saved layout',
};
