import { normals } from './chance.js';
import { type Kept, rounded } from './download.js';
import { DAY, HOUR, midnight, moments } from './hours.js';

/** Discharge at the bridge in the last weeks of the season, m³/s: the freshet running off, two rains. */
export function dischargeAtBridge(from: number, to: number): Kept[] {
  const draw = normals(17);
  const since = (date: string, at: number, days: number) => {
    const passed = (at - midnight(date)) / DAY;
    return passed < 0 ? 0 : Math.min(1, passed * 2) * Math.exp(-passed / days);
  };
  return moments(from, to, HOUR).map((at) => {
    const flow =
      5 + 34 * since('2026-05-06', at, 11) + 9 * since('2026-06-02', at, 3) + 6 * since('2026-06-13', at, 3);
    return { at, value: rounded(flow * (1 + 0.004 * draw()), 2) };
  });
}

/** The gauge board's curve at the bridge, m: Q = 14 (h - 0.21)^1.7, turned round. */
export const levelAtBridge = (discharge: readonly Kept[]): Kept[] =>
  discharge.map(({ at, value }) => ({ at, value: rounded(0.21 + (value / 14) ** (1 / 1.7), 3) }));
