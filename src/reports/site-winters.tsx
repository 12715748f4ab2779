import { Figures } from '../pages/parts/figure.js';
import type { Speech } from '../pages/speech.js';
import { decimal } from '../words/index.js';
import type { ReportFigures } from './figures.js';
import { called, tenths } from './sentences.js';

/** Winters of the same site side by side, season after season, and what came out of its boxes. */
export function SiteWinters({ figures, speech }: { figures: ReportFigures; speech: Speech }) {
  const { say, language } = speech;
  const all = figures.siteWinters ?? [];
  const sites = new Map<string, number>();
  for (const { site } of all) sites.set(site, (sites.get(site) ?? 0) + 1);
  const rows = all
    .filter(({ site }) => (sites.get(site) ?? 0) > 1)
    .toSorted((a, b) => a.site.localeCompare(b.site, 'en') || (a.season < b.season ? -1 : 1));
  if (rows.length === 0) return null;
  const number = (value: number | null) => (value === null ? '–' : speech.whole(value));
  const one = (value: number | null) => (value === null ? '–' : decimal(language, value, 1));
  return (
    <>
      <h3>{say('report-site-winters', {})}</h3>
      <p>{say('report-site-winters-note', {})}</p>
      <Figures
        caption={say('report-site-winters', {})}
        columns={[
          { name: say('column-site', {}) },
          { name: say('report-col-season', {}) },
          { name: say('column-boxes', {}), number: true },
          { name: say('report-col-units', {}), number: true },
          { name: say('report-col-freezing', {}), number: true },
          { name: say('report-col-range', {}) },
          { name: say('report-col-spells', {}), number: true },
          { name: say('report-col-exposures', {}), number: true },
          { name: say('report-col-gauge', {}), number: true },
          { name: say('report-col-silt', {}), number: true },
          { name: say('report-measure-out', {}), number: true },
        ]}
        rows={rows.map((winter) => [
          called(figures.survival, 'site', winter.site),
          winter.season,
          speech.whole(winter.boxes),
          number(winter.thermalUnits),
          number(winter.atFreezing),
          winter.lowest === null ? '–' : `${one(winter.lowest)} … ${one(winter.highest)}`,
          number(winter.spells),
          number(winter.exposures),
          number(winter.gaugeEvents),
          tenths(winter.siltMm, speech),
          winter.out === null ? '–' : speech.percent(winter.out),
        ])}
      />
    </>
  );
}
