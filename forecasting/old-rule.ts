import type { DailyMeans } from './accumulate.js';
import { accumulate } from './accumulate.js';
import type { OldRuleAnswer } from './forecast.js';
import type { Law } from './table.js';
import { thermalUnits, whenUnitsReached } from './thermal-units.js';
import type { Celsius, DayTime, ThermalUnits } from './units.js';

/** Two dates closer than this say the same, given what either can know. */
const SAME: number = 3;
/** Days at or below this gather next to nothing under a fixed rule, while eggs go on developing. */
const COLD: Celsius = 1;
/** Share of the way to hatch made in cold water from which the cold is the reason. */
const COLD_MATTERS = 0.1;

/**
 * What the group's fixed rule says of the same water: hatch where the degree-days above `base` since fertilisation
 * reach its number; and why that differs from `hatch`, the median of our window (null where it has no date).
 */
export function oldRule(
  rule: { readonly thermalUnits: ThermalUnits; readonly base: Celsius },
  water: DailyMeans,
  fertilised: DayTime,
  hatch: DayTime | null,
  law: Law | null,
): OldRuleAnswer {
  const said = whenUnitsReached(water, fertilised, rule.thermalUnits, rule.base);
  const answer = (why: OldRuleAnswer['why']): OldRuleAnswer => ({
    thermalUnits: rule.thermalUnits,
    hatch: said,
    why,
  });
  if (said === null) {
    const through = lastKnown(water, fertilised);
    const gathered = thermalUnits(water, fertilised, through, rule.base) ?? 0;
    if (through <= fertilised)
      return answer({ code: 'old-rule-no-water', with: { rule: rule.thermalUnits } });
    return answer({
      code: 'old-rule-never',
      with: { gathered, rule: rule.thermalUnits, through: Math.floor(through) - 1 },
    });
  }
  if (hatch === null || law === null)
    return answer({ code: 'old-rule-alone', with: { rule: rule.thermalUnits } });
  const days = Math.abs(said - hatch);
  if (days <= SAME) return answer({ code: 'old-rule-agrees', with: { days } });
  const needed = thermalUnits(water, fertilised, hatch, rule.base) ?? 0;
  if (said < hatch)
    return answer({ code: 'old-rule-early', with: { days, needed, rule: rule.thermalUnits } });
  const cold = coldSpell(water, fertilised, hatch, law, rule.base);
  if (cold.share >= COLD_MATTERS) return answer({ code: 'old-rule-late-cold', with: { days, ...cold } });
  return answer({ code: 'old-rule-late', with: { days, needed, rule: rule.thermalUnits } });
}

/** What the days at or below 1 °C brought: how many, what share of the way to hatch, how many degree-days. */
function coldSpell(water: DailyMeans, from: DayTime, to: DayTime, law: Law, base: Celsius) {
  const cold = { coldDays: 0, share: 0, units: 0 };
  for (let day = Math.floor(from); day < to; day++) {
    const celsius = water.mean[day - water.firstDay];
    if (!(celsius <= COLD)) continue;
    cold.coldDays++;
    cold.share += accumulate(law, water, day, day + 1) ?? 0;
    cold.units += Math.max(0, celsius - base);
  }
  return cold;
}

function lastKnown({ firstDay, mean }: DailyMeans, from: DayTime): DayTime {
  let d = Math.max(0, Math.floor(from) - firstDay);
  while (d < mean.length && Number.isFinite(mean[d])) d++;
  return firstDay + d;
}
