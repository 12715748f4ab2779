import type { SettledLayout } from '../../../adapters/download.js';
import type { SavedLayout } from '../../../adapters/layouts-saved.js';
import { list } from '../../words/index.js';
import { Csrf, Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { mayEdit, type View } from '../view.js';

interface LayoutsProps {
  readonly view: View;
  readonly layouts: readonly SavedLayout[];
  readonly refusal?: string;
}

/** Every layout of downloads that the group keeps: which files are read by it, and what it settles. */
export function LayoutsPage({ view, layouts, refusal }: LayoutsProps) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-layouts-title', {})}
      answer={say('page-layouts-answer', { count: layouts.length })}
      current="downloads"
      cautions={false}
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      <p>
        <a href="/downloads">← {say('page-downloads-title', {})}</a>
      </p>
      {layouts.map((layout) => (
        <OneLayout view={view} layout={layout} />
      ))}
      <p class="small">
        {say('page-layouts-how', {})} <WorkedOut view={view} about="understood" />
      </p>
      <SameAs view={view} json="/api/v1/layouts" />
    </Frame>
  );
}

function OneLayout({ view, layout }: { view: View; layout: SavedLayout }) {
  const { say } = view;
  return (
    <section class="sheet">
      <h2>{layout.name}</h2>
      <p>{say('page-layouts-known-by', { files: knownBy(view, layout) })}</p>
      <dl class="facts">
        {settledFacts(view, layout.settled).map(([name, value]) => (
          <div>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {mayEdit(view) ? (
        <form method="post" action="/downloads/layouts/remove">
          <Csrf view={view} />
          <input type="hidden" name="name" value={layout.name} />
          <button
            type="submit"
            class="quiet"
            aria-label={say('page-layouts-remove-what', { layout: layout.name })}
          >
            {say('page-layouts-remove', {})}
          </button>
          <span class="small"> {say('page-layouts-remove-note', {})}</span>
        </form>
      ) : null}
    </section>
  );
}

function knownBy({ say }: View, { match }: SavedLayout): string {
  if ('header' in match) return say('cli-layouts-header', { headers: match.header });
  if ('opening' in match) return say('cli-layouts-opening', { opening: match.opening });
  return say('cli-layouts-file-name', { part: match.fileName });
}

/** What a layout settles, part by part, as a person would say it. */
export function settledFacts(view: View, settled: SettledLayout): readonly (readonly [string, string])[] {
  const { say, language } = view;
  const column = (name: string | number | undefined) =>
    name === undefined
      ? undefined
      : typeof name === 'number'
        ? say('page-layouts-column', { number: name })
        : say('page-quoted', { text: name });
  const { delimiter, decimal, unit, dateOrder, headerLine, missing = [] } = settled;
  const facts: readonly (readonly [string, string | undefined])[] = [
    [say('page-understood-value', {}), column(settled.temperature)],
    [say('page-layouts-level', {}), column(settled.level)],
    [say('page-layouts-discharge', {}), column(settled.discharge)],
    [say('page-layouts-station', {}), column(settled.station)],
    [say('page-understood-unit', {}), unit === undefined ? undefined : unit === 'K' ? 'K' : `°${unit}`],
    [
      say('page-understood-time', {}),
      settled.time &&
        list(
          language,
          settled.time.flatMap((name) => column(name) ?? []),
        ),
    ],
    [say('page-understood-zone', {}), settled.zone],
    [say('page-understood-order', {}), dateOrder && say(`page-order-${dateOrder}`, {})],
    [
      say('page-understood-delimiter', {}),
      delimiter === undefined
        ? undefined
        : delimiter === '\t'
          ? say('page-understood-tab', {})
          : say('page-quoted', { text: delimiter }),
    ],
    [say('page-understood-decimal', {}), decimal && say('page-quoted', { text: decimal })],
    [
      say('page-layouts-header-line', {}),
      headerLine === undefined
        ? undefined
        : headerLine === 0
          ? say('page-layouts-no-header', {})
          : view.whole(headerLine),
    ],
    [say('page-understood-encoding', {}), settled.encoding],
    [
      say('page-layouts-missing', {}),
      missing.length === 0
        ? undefined
        : list(
            language,
            missing.map((text) => say('page-quoted', { text })),
          ),
    ],
  ];
  return facts.flatMap(([name, value]) =>
    value === undefined || value === '' ? [] : [[name, value] as const],
  );
}
