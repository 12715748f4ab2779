import type { AllWords } from '../../words/index.js';
import type { KindName } from '../editing-words.js';

type FieldWord = Extract<keyof AllWords, `page-field-${string}`>;

/** How a field of a thing is asked for. `path` leads into the season document's own keys. */
export interface Field {
  readonly path: readonly string[];
  readonly word: FieldWord;
  readonly as: 'text' | 'number' | 'moment' | 'date' | 'long' | 'list' | 'yes' | 'choice';
  /** Of a choice: fixed values, or what the season lists. */
  readonly of?: 'station' | 'site' | 'lot' | 'logger' | 'box' | 'table' | 'kind' | 'lay' | 'risk';
  readonly must?: boolean;
}

export interface Kind {
  readonly list: KindName;
  readonly fields: readonly Field[];
  /** Has fills: rows of lot, part, eggs, planted. */
  readonly fills?: true;
  /** What names one of them in a list. */
  readonly named: readonly string[];
}

const field = (key: string, word: FieldWord, as: Field['as'], more: Partial<Field> = {}): Field => ({
  path: [key],
  word,
  as,
  ...more,
});
const id = field('id', 'page-field-id', 'text', { must: true });
const name = field('name', 'page-field-name', 'text');
const note = field('note', 'page-field-note', 'long');
const latitude = field('latitude', 'page-field-latitude', 'number');
const longitude = field('longitude', 'page-field-longitude', 'number');
const accuracy = field('accuracy', 'page-field-accuracy', 'number');

/** Fields that forms ask for; what else a season file may say stays as it is. */
export const kinds: readonly Kind[] = [
  {
    list: 'boxes',
    named: ['id'],
    fills: true,
    fields: [
      id,
      field('site', 'page-field-site', 'choice', { of: 'site', must: true }),
      field('stations', 'page-field-stations', 'list'),
      field('lifted', 'page-field-lifted', 'moment'),
      field('bankMark', 'page-field-bankMark', 'text'),
      field('tiedTo', 'page-field-tiedTo', 'text'),
      latitude,
      longitude,
      field('find', 'page-field-find', 'long'),
      note,
    ],
  },
  {
    list: 'lots',
    named: ['id'],
    fields: [
      id,
      field('fertilised', 'page-field-fertilised', 'moment', { must: true }),
      field('eggs', 'page-field-eggs', 'number', { must: true }),
      field('table', 'page-field-table', 'choice', { of: 'table', must: true }),
      field('parents', 'page-field-parents', 'list'),
      { path: ['before', 'station'], word: 'page-field-before-station', as: 'choice', of: 'station' },
      { path: ['before', 'celsius'], word: 'page-field-before-celsius', as: 'number' },
      { path: ['control', 'eggs'], word: 'page-field-control-eggs', as: 'number' },
      { path: ['control', 'fertilised'], word: 'page-field-control-fertilised', as: 'number' },
      { path: ['control', 'of'], word: 'page-field-control-of', as: 'number' },
      field('lost', 'page-field-lost-eggs', 'number'),
      field('leftOver', 'page-field-left-over', 'number'),
      note,
    ],
  },
  {
    list: 'sites',
    named: ['name', 'id'],
    fields: [
      id,
      name,
      field('station', 'page-field-station', 'choice', { of: 'station' }),
      field('iceRisk', 'page-field-iceRisk', 'choice', { of: 'risk' }),
      field('depthM', 'page-field-depthM', 'number'),
      field('velocityMs', 'page-field-velocityMs', 'number'),
      field('bed', 'page-field-bed', 'text'),
      latitude,
      longitude,
      field('access', 'page-field-access', 'long'),
      field('consent', 'page-field-consent', 'text'),
      field('bankMark', 'page-field-bankMark', 'text'),
      field('find', 'page-field-find', 'long'),
      note,
    ],
  },
  {
    list: 'stations',
    named: ['name', 'id'],
    fields: [
      id,
      name,
      field('kind', 'page-field-kind', 'choice', { of: 'kind', must: true }),
      field('reports', 'page-field-reports', 'yes'),
      field('place', 'page-field-place', 'text'),
      latitude,
      longitude,
      field('zone', 'page-field-zone', 'text'),
      accuracy,
      note,
    ],
  },
  {
    list: 'loggers',
    named: ['id'],
    fields: [
      id,
      field('serial', 'page-field-serial', 'text'),
      accuracy,
      field('memory', 'page-field-memory', 'number'),
      field('interval', 'page-field-interval', 'number'),
      field('clock', 'page-field-clock', 'text'),
      note,
    ],
  },
  {
    list: 'deployments',
    named: ['logger', 'station', 'from'],
    fields: [
      field('logger', 'page-field-logger', 'choice', { of: 'logger', must: true }),
      field('station', 'page-field-station', 'choice', { of: 'station', must: true }),
      field('lay', 'page-field-lay', 'choice', { of: 'lay', must: true }),
      field('box', 'page-field-box', 'choice', { of: 'box' }),
      field('from', 'page-field-from', 'moment', { must: true }),
      field('to', 'page-field-to', 'moment'),
      field('read', 'page-field-read', 'list'),
      field('clock', 'page-field-clock', 'text'),
      field('lost', 'page-field-lost', 'yes'),
      note,
    ],
  },
  {
    list: 'blocked',
    named: ['from', 'to', 'reason'],
    fields: [
      field('from', 'page-field-from', 'date', { must: true }),
      field('to', 'page-field-to', 'date', { must: true }),
      field('site', 'page-field-site', 'choice', { of: 'site' }),
      field('reason', 'page-field-reason', 'text', { must: true }),
    ],
  },
  {
    list: 'permits',
    named: ['number', 'from', 'to'],
    fields: [
      field('number', 'page-field-number', 'text', { must: true }),
      field('authority', 'page-field-authority', 'text'),
      field('from', 'page-field-from', 'date', { must: true }),
      field('to', 'page-field-to', 'date', { must: true }),
      field('reportDue', 'page-field-reportDue', 'date'),
      field('site', 'page-field-site', 'choice', { of: 'site' }),
      note,
    ],
  },
];
