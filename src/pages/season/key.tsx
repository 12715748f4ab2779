import type { View } from '../view.js';
import type { Bar } from './lanes.js';

/** Which bar is which stage, in one line. The patterns bars are filled with are defined here. */
export function Legend({ view, bars }: { view: View; bars: readonly Bar[] }) {
  return (
    <div class="key">
      <ul class="lanes">
        {bars.map(({ stages, style }) => (
          <li>
            <svg width="30" height="11" aria-hidden="true">
              <g class={`s${style}`}>
                <rect class="wide" x="0" y="1" width="30" height="9" rx="2" />
                <rect class="solid" x="5" y="3" width="20" height="5" />
                <line class="median" x1="15" x2="15" y1="0" y2="11" />
              </g>
            </svg>{' '}
            {stages.map(view.stage).join(', ')}
          </li>
        ))}
      </ul>
      <svg class="patterns" width="0" height="0" aria-hidden="true">
        <defs>
          <pattern
            id="pattern-1"
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect width="5" height="5" class="ground-1" />
            <line x1="0" x2="0" y1="0" y2="5" class="grain" />
          </pattern>
          <pattern id="pattern-3" width="4" height="4" patternUnits="userSpaceOnUse">
            <rect width="4" height="4" class="ground-3" />
            <circle cx="2" cy="2" r="1" class="dot" />
          </pattern>
        </defs>
      </svg>
    </div>
  );
}

/** How a strip is read. */
export function Reading({ view: { say } }: { view: View }) {
  return (
    <section aria-labelledby="key">
      <h2 id="key">{say('page-season-key', {})}</h2>
      <p class="small">
        {say('page-season-key-solid', {})} {say('page-season-key-band', {})} {say('page-season-key-tick', {})}{' '}
        {say('page-season-key-passed', {})} {say('page-season-key-today', {})}{' '}
        {say('page-season-key-water', {})}
      </p>
    </section>
  );
}
