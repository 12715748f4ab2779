import { normals } from './chance.js';
import { HOUR, HOURS, type Hourly, midnight } from './hours.js';
import { type Reach, waterOf } from './river.js';
import { airOfTheValley } from './weather.js';

/** What was truly there, hour by hour, before any instrument looked at it. */
export interface River {
  readonly airfield: Hourly;
  readonly weir: Hourly;
  readonly bridge: Hourly;
  readonly upper: Hourly;
  readonly ford: Hourly;
  readonly braid: Hourly;
  readonly tank: Hourly;
}

const REACHES: Record<'weir' | 'bridge' | 'upper' | 'ford' | 'braid', Reach> = {
  weir: { seed: 11, lag: 46, sun: 1.8, springs: 0.02, plateau: 0.02, shallow: 0.1 },
  bridge: { seed: 12, lag: 64, sun: 2.4, springs: 0.01, plateau: 0.0, shallow: 0.05 },
  upper: { seed: 13, lag: 34, sun: 0.8, springs: 0.06, plateau: 0.03, shallow: 0.12 },
  ford: { seed: 14, lag: 44, sun: 1.6, springs: 0.03, plateau: 0.02, shallow: 0.1 },
  braid: { seed: 15, lag: 30, sun: 3.2, springs: 0.01, plateau: 0.01, shallow: 0.45 },
};

export function inventedRiver(): River {
  const air = airOfTheValley(73);
  return {
    airfield: air,
    weir: waterOf(REACHES.weir, air),
    bridge: waterOf(REACHES.bridge, air),
    upper: waterOf(REACHES.upper, air),
    ford: waterOf(REACHES.ford, air),
    braid: waterOf(REACHES.braid, air),
    tank: tankWater(),
  };
}

/** The pump stopped in the evening of 7 November; the room is heated. It ran again at eight the next morning. */
const PUMP = { stopped: midnight('2025-11-07') + 18 * HOUR, ran: midnight('2025-11-08') + 8 * HOUR };

/** Hatchery water held at 6.8 °C, and the night it was not. */
function tankWater(): Hourly {
  const draw = normals(16);
  let water = 6.8;
  return Float64Array.from({ length: HOURS }, (_, i) => {
    const at = midnight('2020-09-01') + i * HOUR;
    const standing = at >= PUMP.stopped && at < PUMP.ran;
    water += standing ? (20.5 - water) / 5 : (6.8 - water) / 2.5;
    return water + 0.08 * draw();
  });
}
