import { CHART_WIDTH, type Letter } from '../../messages/index.js';
import type { View } from '../view.js';

const HEADING = '== ';
const POINT = '- ';
/** A line that ends with an address of this service leads there by the words before it. */
const LINK = /^(.+?)[\s\u00a0]*:[\s\u00a0]+(https?:\/\/\S+)$/;

/** A letter's plain text (src/messages/letter.ts writes it) as a page shows it: headings, points, links, its chart. */
export function LetterText({ view, letter, chart }: { view: View; letter: Letter; chart: string }) {
  const blocks = letter.text.trim().split('\n\n');
  const picture = `[${letter.chartTitle}]`;
  return (
    <div class="letter">
      {blocks.map((block) =>
        letter.chart !== null && block === picture ? (
          <figure>
            <figcaption>{letter.chartTitle}</figcaption>
            <img src={chart} alt={letter.chartTitle} width={CHART_WIDTH} />
            <p class="small">{view.say('letter-chart-key', {})}</p>
          </figure>
        ) : (
          <Block lines={block.split('\n')} here={letter.link} />
        ),
      )}
    </div>
  );
}

function Block({ lines, here }: { lines: readonly string[]; here: string }) {
  const points = lines.filter((line) => line.startsWith(POINT));
  const others = lines.filter((line) => !line.startsWith(POINT));
  return (
    <>
      {others.map((line) => (points.length > 0 ? <h2>{line}</h2> : <Line line={line} here={here} />))}
      {points.length === 0 ? null : (
        <ul>
          {points.map((line) => (
            <li>{line.slice(POINT.length)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function Line({ line, here }: { line: string; here: string }) {
  if (line.startsWith(HEADING)) return <h2>{line.slice(HEADING.length)}</h2>;
  const [, name, address] = LINK.exec(line) ?? [];
  if (name === undefined || address === undefined) return <p>{line}</p>;
  // The page that the letter's own link leads to is this one; a name may hold somebody else's address.
  if (address === here) return null;
  if (!URL.canParse(address) || new URL(address).origin !== new URL(here).origin) return <p>{line}</p>;
  return (
    <p>
      <a href={address}>{name}</a>
    </p>
  );
}
