import { describe, expect, it } from 'vitest';
import {
  type FoundSpell,
  type JudgedSpell,
  rejudge,
  type StandingSpell,
} from '../../../forecasting/spells/index.js';
import { BEGIN, DAY, HOUR, held, judged } from './eggs.js';

const NOW = BEGIN + 250 * DAY;
const at = (now = NOW, inSeason = true) => ({ now, dayOffset: 0, inSeason: () => inSeason });
const standing = (spell: JudgedSpell, settled: StandingSpell['settled'] = null): StandingSpell => ({
  spell,
  settled,
});

const [warm] = judged({ from: 50, hours: held(17, 12) });
if (warm === undefined) throw new Error('17 °C for half a day is a spell');
const measured: FoundSpell = warm;
const possible: FoundSpell = { ...measured, certainty: 'possible', origin: 'filled', chance: 0.5 };
const exposure: FoundSpell = { ...possible, kind: 'exposure', severity: 'watch', chance: null };

/** What stands after one judging of nothing but this. */
function judgedOnce(found: FoundSpell, now = NOW): JudgedSpell {
  const [spell] = rejudge([], [found], at(now)).changed;
  if (spell === undefined) throw new Error('nothing was kept');
  return spell;
}
const changes = ({ events }: ReturnType<typeof rejudge>) => events.map(({ change }) => change);

describe('a spell found', () => {
  it('three months later is past, and is told once', () => {
    const first = rejudge([], [measured], at());
    expect(changes(first)).toEqual(['past']);
    expect(first.changed).toMatchObject([{ state: 'past', id: 'too-warm-own-2025-12-20' }]);
    const again = rejudge(
      first.changed.map((spell) => standing(spell)),
      [measured],
      at(NOW + DAY),
    );
    expect(again).toEqual({ changed: [], events: [] });
  });
  it('while it runs is opened, then ended, under one name', () => {
    const running = { ...measured, running: true };
    const first = judgedOnce(running, measured.to + HOUR);
    expect(first.state).toBe('open');
    const longer = { ...measured, to: measured.to + 5 * HOUR };
    const ended = rejudge([standing(first)], [longer], at());
    expect(changes(ended)).toEqual(['ended']);
    expect(ended.changed).toMatchObject([{ id: first.id, state: 'ended', to: longer.to }]);
  });
  it('that reaches the graver class is told as worsened', () => {
    const mild = judgedOnce({ ...measured, severity: 'lowers-survival', running: true });
    expect(changes(rejudge([standing(mild)], [{ ...measured, running: true }], at()))).toEqual(['worsened']);
  });
});

describe('a possible spell', () => {
  it('less likely than 3 in 10 is not raised; one that stands is kept until it is not named at all', () => {
    expect(rejudge([], [{ ...possible, chance: 0.25 }], at()).events).toEqual([]);
    const raised = judgedOnce(possible);
    expect(rejudge([standing(raised)], [{ ...possible, chance: 0.25 }], at()).events).toEqual([]);
  });
  it('is confirmed by a late download', () => {
    const confirmed = rejudge([standing(judgedOnce(possible))], [measured], at());
    expect(changes(confirmed)).toEqual(['confirmed']);
    expect(confirmed.changed).toMatchObject([{ state: 'confirmed', certainty: 'measured', chance: null }]);
  });
  it('or withdrawn by it', () => {
    const withdrawn = rejudge([standing(judgedOnce(possible))], [], at());
    expect(changes(withdrawn)).toEqual(['withdrawn']);
    expect(
      changes(
        rejudge(
          withdrawn.changed.map((spell) => standing(spell)),
          [],
          at(),
        ),
      ),
    ).toEqual([]);
  });
});

describe('history', () => {
  it('stays when the season no longer has the eggs', () => {
    expect(rejudge([standing(judgedOnce(measured))], [], at(NOW, false))).toEqual({
      changed: [],
      events: [],
    });
  });
  it('an exposure stays open until a person settles it, and settled it stays what the person said', () => {
    const open = judgedOnce(exposure);
    expect(open.state).toBe('open');
    expect(rejudge([standing(open)], [exposure], at(NOW + 30 * DAY)).events).toEqual([]);
    const settled = { ...open, state: 'withdrawn' as const };
    expect(rejudge([standing(settled, 'did-not-happen')], [exposure], at()).events).toEqual([]);
    expect(rejudge([standing(settled, 'did-not-happen')], [], at()).events).toEqual([]);
  });
  it('a measured spell whose load was withdrawn is withdrawn, and comes back as past with the load', () => {
    const gone = rejudge([standing(judgedOnce(measured))], [], at());
    expect(changes(gone)).toEqual(['withdrawn']);
    const back = rejudge(
      gone.changed.map((spell) => standing(spell)),
      [measured],
      at(),
    );
    expect(changes(back)).toEqual(['past']);
    expect(back.changed[0]?.id).toBe(gone.changed[0]?.id);
  });
});
