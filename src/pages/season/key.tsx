import type { View } from '../view.js';
import type { Lane } from './lanes.js';

/** What the strips mean, each lane with the stages it shows. The patterns they are filled with are defined here. */
export function Key({ view, lanes }: { view: View; lanes: readonly Lane[] }) {
  const { say } = view;
  return (
    <section class="key" aria-labelledby="key">
      <h2 id="key">{say('page-season-key', {})}</h2>
      <ul class="lanes">
        {lanes.map(({ stages, style }) => (
          <li>
            <svg width="44" height="11" aria-hidden="true">
              <g class={`s${style}`}>
                <rect class="wide" x="0" y="1" width="44" height="9" rx="2" />
                <rect class="solid" x="8" y="3" width="28" height="5" />
                <line class="median" x1="22" x2="22" y1="0" y2="11" />
              </g>
            </svg>{' '}
            {stages.map(view.stage).join(', ')}
          </li>
        ))}
      </ul>
      <p class="small">
        {say('page-season-key-solid', {})} {say('page-season-key-band', {})} {say('page-season-key-tick', {})}{' '}
        {say('page-season-key-passed', {})} {say('page-season-key-today', {})} {say('page-season-key-water', {})}
      </p>
      <svg class="patterns" width="0" height="0" aria-hidden="true">
        <defs>
          <pattern id="pattern-1" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="5" height="5" class="ground-1" />
            <line x1="0" x2="0" y1="0" y2="5" class="grain" />
          </pattern>
          <pattern id="pattern-3" width="4" height="4" patternUnits="userSpaceOnUse">
            <rect width="4" height="4" class="ground-3" />
            <circle cx="2" cy="2" r="1" class="dot" />
          </pattern>
        </defs>
      </svg>
    </section>
  );
}
