import { csvText } from '../http/csv.js';
import type { Speech } from '../pages/speech.js';
import type { ReportFigures } from './figures.js';
import { type DataColumn, type Resource, resources } from './resources.js';

/** Digits that a figure keeps in the open data. */
const DIGITS = 7;

/** The report's tables as CSV, and what stands in them as a Frictionless Data Package (specs.frictionlessdata.io). */
export function dataFiles(figures: ReportFigures, speech: Speech): Record<string, string> {
  const all = resources(figures);
  const files = all.map((resource): [string, string] => [`${resource.name}.csv`, csvOf(resource)]);
  return {
    ...Object.fromEntries(files),
    'datapackage.json': `${JSON.stringify(packageOf(figures, all, speech), null, 2)}\n`,
  };
}

function csvOf({ columns, rows }: Resource): string {
  const header = columns.map(({ name }) => name).join(',');
  const lines = rows.map((row) => row.map(cellText).join(','));
  return [header, ...lines].map((line) => `${line}\r\n`).join('');
}

function cellText(value: string | number | boolean | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? `${Number(value.toPrecision(DIGITS))}` : '';
  return typeof value === 'boolean' ? `${value}` : csvText(value);
}

function packageOf(figures: ReportFigures, all: readonly Resource[], speech: Speech) {
  const { say } = speech;
  return {
    profile: 'tabular-data-package',
    name: `season-${figures.season.replace(/[^a-z0-9-]/g, '') || 'none'}`,
    title: say('data-title', { group: figures.group, season: figures.season }),
    description: say('data-about', {}),
    version: `${figures.method}`,
    languages: [speech.language],
    resources: all.map((resource) => ({
      profile: 'tabular-data-resource',
      name: resource.name,
      path: `${resource.name}.csv`,
      description: say(resource.about, {}),
      format: 'csv',
      mediatype: 'text/csv',
      encoding: 'utf-8',
      dialect: { delimiter: ',', lineTerminator: '\r\n', header: true },
      schema: {
        fields: resource.columns.map((column) => fieldOf(column, speech)),
        missingValues: [''],
      },
    })),
  };
}

function fieldOf({ name, type, unit, means }: DataColumn, { say, stage }: Speech) {
  return {
    name,
    type,
    ...(type === 'date'
      ? { format: '%Y-%m-%d' }
      : type === 'datetime'
        ? { format: '%Y-%m-%dT%H:%M:%SZ' }
        : {}),
    // A column that counts nothing and measures nothing says so.
    unit: unit ?? '-',
    description: typeof means === 'string' ? say(means, {}) : say(means.code, { stage: stage(means.stage) }),
  };
}
