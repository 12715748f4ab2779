import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';

/** Plot draws into a document of the server's own: no browser, no script on the page. */
const { document } = parseHTML('<html><body></body></html>');

let drawn = 0;

export interface Named {
  /** What the chart finds, in a sentence: read out in place of the picture, and shown above it. */
  readonly title: string;
}

/**
 * A chart as SVG text: sized by its frame, coloured by the page's own style (light, dark and print), named by its
 * finding. Its figures stand in a table beside it: see `ChartFigure`.
 */
export function drawChart({ title }: Named, options: Plot.PlotOptions): string {
  const svg = Plot.plot({
    width: 720,
    height: 260,
    // Room for '140 %' also where a phone's style makes the letters larger.
    marginLeft: 56,
    marginTop: 26,
    marginBottom: 32,
    style: { fontSize: '12px' },
    ...options,
    figure: false,
    document,
    className: 'plot',
  });
  svg.querySelector('style')?.remove();
  for (const element of svg.querySelectorAll('[aria-label]')) element.removeAttribute('aria-label');
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-labelledby', `chart-${++drawn % 1_000_000}`);
  const name = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  name.setAttribute('id', `chart-${drawn % 1_000_000}`);
  name.textContent = title;
  svg.insertBefore(name, svg.firstChild);
  return svg.outerHTML;
}

/** A day number as Plot's time axis takes it. */
export const dateOf = (day: number): Date => new Date(day * 86_400_000);
