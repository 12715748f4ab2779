import { html, raw } from 'hono/html';
import { assetText } from '../pages/assets.js';
import { type Speech, speech } from '../pages/speech.js';
import type { Season } from '../season/index.js';
import { type Language, languages, longDay, spacedPage } from '../words/index.js';
import { dataFiles } from './data-package.js';
import type { ReportFigures } from './figures.js';
import { FunderSummary } from './funder.js';
import { type MapWay, siteMap } from './map.js';
import { DAY_HERE, MADE_HERE, MAP_HERE, STYLE_HERE } from './marks.js';
import { PermitTable } from './permits.js';
import { SeasonReport } from './season-report.js';

export const reportKinds = ['report', 'funder', 'permits'] as const;
export type ReportKind = (typeof reportKinds)[number];

/** A season's reports in one language with the day of printing, the map and the style still to be put in. */
export interface ReportTexts {
  readonly documents: Readonly<Record<ReportKind, string>>;
  readonly data: Readonly<Record<string, string>>;
  readonly maps: Readonly<Record<'coarse' | 'exact', string>>;
  readonly made: string;
}

export interface Documents {
  readonly texts: Readonly<Record<Language, ReportTexts>>;
  readonly style: string;
}

/** Who closed the season, where a name was given, and on which day; null while it is open. */
export type ClosedBy = { readonly by: string | null; readonly day: number } | null;

/** Every report of a season in both languages. */
export async function reportDocuments(
  figures: ReportFigures,
  season: Season,
  closed: ClosedBy,
): Promise<Documents> {
  const texts = await Promise.all(
    languages.map(async (language) => [language, await textsIn(language, figures, season, closed)] as const),
  );
  const [en, fr] = texts.map(([, text]) => text);
  return { texts: { en, fr }, style: assetText('style.css') };
}

async function textsIn(
  language: Language,
  figures: ReportFigures,
  season: Season,
  closed: ClosedBy,
): Promise<ReportTexts> {
  const spoken = speech(language);
  const { say } = spoken;
  const named = { group: figures.group, season: figures.season };
  const parts: Record<ReportKind, { title: string; body: unknown }> = {
    report: { title: say('report-title', named), body: <SeasonReport figures={figures} speech={spoken} /> },
    funder: {
      title: say('report-funder-title', named),
      body: <FunderSummary figures={figures} speech={spoken} />,
    },
    permits: {
      title: say('report-permits-title', named),
      body: <PermitTable figures={figures} speech={spoken} />,
    },
  };
  const document = async (kind: ReportKind) => {
    const { title, body } = parts[kind];
    const page = numberedCharts(await wholePage(spoken, kind, title, `${await body}`, closed));
    // A file that is written has no service to set its signs off.
    return spacedPage(page, language);
  };
  const map = (way: Exclude<MapWay, 'none'>) => {
    const drawn = siteMap(season, way, say('report-map', {}));
    const note = say(drawn === null ? 'report-map-none' : `report-map-${way}`, {});
    const heading = `<h2>${say('report-map', {})}</h2>`;
    return `${heading}${drawn === null ? '' : `<figure class="chart" tabindex="0" aria-label="${say('report-map', {})}">${drawn}</figure>`}<p class="small">${note}</p>`;
  };
  return {
    documents: {
      report: await document('report'),
      funder: await document('funder'),
      permits: await document('permits'),
    },
    data: dataFiles(figures, spoken),
    maps: { coarse: map('coarse'), exact: map('exact') },
    made: say('report-made', { made: DAY_HERE, asOf: figures.asOf }),
  };
}

async function wholePage(
  spoken: Speech,
  kind: ReportKind,
  title: string,
  body: string,
  closed: ClosedBy,
): Promise<string> {
  const { say, language } = spoken;
  const page = await html`<!doctype html>${(
    <html lang={language === 'fr' ? 'fr-CA' : 'en-CA'}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
        {raw(STYLE_HERE)}
      </head>
      <body>
        <main id="main" class={`report ${kind}`}>
          <h1>{title}</h1>
          <p class="small">
            {raw(MADE_HERE)} {closed === null ? say('report-open', {}) : say('report-frozen', closed)}
          </p>
          {raw(body)}
        </main>
      </body>
    </html>
  )}`;
  return `${page}\n`;
}

/** Charts are numbered as they are drawn in the life of the program: in a report they are numbered from one. */
function numberedCharts(page: string): string {
  const numbers = new Map<string, string>();
  return page.replace(/chart-\d+/g, (name) => {
    const known = numbers.get(name) ?? `chart-${numbers.size + 1}`;
    numbers.set(name, known);
    return known;
  });
}

/** One report as a file of its own: printed on a day, with the map that was asked for. */
export function printed(
  { texts, style }: Documents,
  language: Language,
  kind: ReportKind,
  day: number,
  map: MapWay,
): string {
  const { documents, maps, made } = texts[language];
  return documents[kind]
    .replace(STYLE_HERE, () => `<style>${style}</style>`)
    .replace(MADE_HERE, () => made.replace(DAY_HERE, longDay(language, day)))
    .replace(MAP_HERE, () => (map === 'none' ? '' : maps[map]));
}

/** What stands inside the report's own page, for a page that has a frame around it: heading and content apart. */
export function within(page: string): { readonly title: string; readonly body: string } {
  const main = /<main[^>]*>([\s\S]*)<\/main>/.exec(page)?.[1] ?? '';
  const title = /<h1>([\s\S]*?)<\/h1>/.exec(main);
  return { title: title?.[1] ?? '', body: main.slice((title?.index ?? 0) + (title?.[0].length ?? 0)) };
}

/** Every file of a season's report in a language: the three reports, the tables and what stands in them. */
export function reportFiles(
  documents: Documents,
  language: Language,
  day: number,
  map: MapWay,
): Record<string, string> {
  const pages = reportKinds.map((kind): [string, string] => [
    `${kind}.html`,
    printed(documents, language, kind, day, map),
  ]);
  return { ...Object.fromEntries(pages), ...documents.texts[language].data };
}
