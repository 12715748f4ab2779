import type { Asked } from '../../../adapters/index.js';

/** What a person says of a file, as the fields of the form hold it: texts, empty where nothing is said. */
export interface Answers {
  readonly station: string;
  readonly newStation: string;
  readonly zone: string;
  readonly unit: string;
  readonly column: string;
  readonly dateOrder: string;
  /** 'yes' where stations that the season does not have are to be made. */
  readonly create: string;
}

export const FIELDS = ['station', 'newStation', 'zone', 'unit', 'column', 'dateOrder', 'create'] as const;

export function answersFrom(field: (name: string) => string | undefined): Answers {
  const text = (name: string) => (field(name) ?? '').trim().slice(0, 500);
  return {
    station: text('station'),
    newStation: text('newStation'),
    zone: text('zone'),
    unit: text('unit'),
    column: text('column'),
    dateOrder: text('dateOrder'),
    create: text('create'),
  };
}

/** The answers as a load takes them; a new station's name goes before a known one. */
export function askedFrom(
  answers: Answers,
): Pick<Asked, 'station' | 'zone' | 'unit' | 'column' | 'dateOrder'> {
  const station = answers.newStation || answers.station;
  const unit = (['C', 'F', 'K'] as const).find((one) => one === answers.unit);
  const dateOrder = (['ymd', 'dmy', 'mdy'] as const).find((one) => one === answers.dateOrder);
  return {
    ...(station === '' ? {} : { station }),
    ...(answers.zone === '' ? {} : { zone: answers.zone }),
    ...(answers.column === '' ? {} : { column: answers.column }),
    ...(unit === undefined ? {} : { unit }),
    ...(dateOrder === undefined ? {} : { dateOrder }),
  };
}

/** The name under which the way a file was read is to be kept; empty where it is not. */
export const layoutNamed = (field: (name: string) => string): string => field('layout').trim().slice(0, 200);

/** May the load make stations that are not there? */
export const mayMake = ({ newStation, create }: Answers): boolean => newStation !== '' || create === 'yes';
