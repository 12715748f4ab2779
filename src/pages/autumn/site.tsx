import type { SiteCard, SitePast } from '../../autumn/index.js';
import { decimal } from '../../words/index.js';
import { capitalised } from '../../words/season-field.js';
import { Figures } from '../parts/figure.js';
import { Frame, SameAs } from '../parts/frame.js';
import { mayEdit, type View } from '../view.js';

/** A site's card: how to get there, how to find each box, what the place is like, what came of it in past seasons. */
export function SitePage({ view, card, index }: { view: View; card: SiteCard; index: number }) {
  const { say } = view;
  const { site, boxes, past } = card;
  return (
    <Frame
      view={view}
      title={say('page-site-title', { site: site.name ?? site.id })}
      answer={said(view, card)}
      current="autumn"
    >
      <Facts rows={placeRows(view, card)} />
      <Photographs view={view} names={site.photographs} />
      {boxes.length === 0 ? null : <h2>{say('page-site-boxes', {})}</h2>}
      {boxes.map((box) => (
        <section>
          <h3>
            <a href={`/boxes/${encodeURIComponent(box.id)}`}>{box.id}</a>
          </h3>
          <Facts rows={boxRows(view, box)} />
          <Photographs view={view} names={box.photographs} />
        </section>
      ))}
      {past.length === 0 ? null : <Past view={view} past={past} />}
      <p class="no-print">
        {mayEdit(view) ? <a href={`/editing/sites/${index}`}>{say('page-site-edit', {})}</a> : null}
      </p>
      <SameAs view={view} json="/api/v1/sites" csv="/api/v1/sites.csv" />
    </Frame>
  );
}

function said({ say, percent }: View, { boxes, past }: SiteCard): string {
  const outs = past.flatMap(({ out }) => out ?? []);
  if (outs.length === 0) return say('page-site-answer', { boxes: boxes.length });
  return say('page-site-answer-past', {
    boxes: boxes.length,
    seasons: outs.length,
    least: percent(Math.min(...outs)),
    most: percent(Math.max(...outs)),
  });
}

type Rows = readonly (readonly [name: string, value: string | null])[];

function placeRows({ say, language }: View, { site }: SiteCard): Rows {
  const metres = (value: number | null) => (value === null ? null : `${decimal(language, value, 2)} m`);
  return [
    [say('page-field-access', {}), site.access],
    [say('page-field-consent', {}), site.consent],
    [say('page-field-find', {}), site.find],
    [say('page-field-bankMark', {}), site.bankMark],
    [say('page-site-position', {}), position(site)],
    [say('page-site-depth', {}), metres(site.depthM)],
    [
      say('page-site-velocity', {}),
      site.velocityMs === null ? null : `${decimal(language, site.velocityMs, 2)} m/s`,
    ],
    [say('page-field-bed', {}), site.bed],
    [say('page-field-iceRisk', {}), site.iceRisk === null ? null : say(`page-risk-${site.iceRisk}`, {})],
    [say('page-field-note', {}), site.note],
  ];
}

function boxRows({ say, language }: View, box: SiteCard['boxes'][number]): Rows {
  return [
    [say('page-field-find', {}), box.find],
    [say('page-field-bankMark', {}), box.bankMark],
    [say('page-field-tiedTo', {}), box.tiedTo],
    [say('page-site-position', {}), position(box)],
    [say('page-site-depth', {}), box.depthM === null ? null : `${decimal(language, box.depthM, 2)} m`],
  ];
}

const position = ({ latitude, longitude }: { latitude: number | null; longitude: number | null }) =>
  latitude === null || longitude === null ? null : `${latitude}, ${longitude}`;

function Facts({ rows }: { rows: Rows }) {
  const stated = rows.filter(([, value]) => value !== null && value !== '');
  if (stated.length === 0) return null;
  return (
    <dl>
      {stated.map(([name, value]) => (
        <>
          <dt>{capitalised(name)}</dt>
          <dd>{value}</dd>
        </>
      ))}
    </dl>
  );
}

function Photographs({ view: { say }, names }: { view: View; names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <p>
      {names.map((name) => (
        <a href={`/api/v1/photographs/${name}`}>
          <img src={`/api/v1/photographs/${name}`} alt={say('face-photo', {})} width="240" loading="lazy" />
        </a>
      ))}
    </p>
  );
}

function Past({ view, past }: { view: View; past: readonly SitePast[] }) {
  const { say, whole, percent } = view;
  const number = (value: number | null) => (value === null ? '–' : whole(value));
  return (
    <section>
      <h2>{say('page-site-past', {})}</h2>
      <Figures
        caption={say('page-site-past', {})}
        columns={[
          { name: say('report-col-season', {}) },
          { name: say('column-boxes', {}), number: true },
          { name: say('report-measure-out', {}), number: true },
          { name: say('page-site-interval', {}), number: true },
          { name: say('report-col-units', {}), number: true },
          { name: say('report-col-freezing', {}), number: true },
        ]}
        rows={past.map(({ season, boxes, out, from, to, thermalUnits, atFreezing }) => [
          season,
          whole(boxes),
          out === null ? '–' : percent(out),
          from === null || to === null
            ? '–'
            : say('page-site-from-to', { from: percent(from), to: percent(to) }),
          number(thermalUnits),
          number(atFreezing),
        ])}
      />
      <p class="small">{say('page-site-past-note', {})}</p>
    </section>
  );
}
