import { stageCalled } from '../../forecasting/tables/stages.js';

/** Eggs that have not come to any stage yet. */
const FERTILISED = 'fertilised';

/** A stage's names in English sentences; a stage of a group's own table is quoted by the name the table gives it. */
export interface StageInEnglish {
  /** Alone, in a list or a heading. */
  readonly name: string;
  /** In a sentence: "is expected", "of the way to". */
  readonly inSentence: string;
  /** After "have probably". */
  readonly done: string;
  /** Of eggs that have come to it. */
  readonly eggs: string;
}

export function stageInEnglish(stage: string): StageInEnglish {
  if (stage === FERTILISED)
    return { name: stage, inSentence: stage, done: 'been fertilised', eggs: 'fertilised' };
  const called = stageCalled(stage)?.en;
  return {
    name: called?.name ?? stage,
    inSentence: called?.name ?? `the stage “${stage}”`,
    done: called?.done ?? `passed the stage “${stage}”`,
    eggs: called?.eggs ?? stage,
  };
}

/** The same in French, with articles and agreement. */
export interface StageInFrench {
  readonly name: string;
  /** "l’éclosion", "de l’éclosion", "à l’éclosion". */
  readonly the: string;
  readonly of: string;
  readonly to: string;
  /** "L’éclosion est attendue". */
  readonly expected: string;
  /** "ont probablement éclos", "n’ont probablement pas encore éclos". */
  readonly probably: string;
  readonly notYet: string;
  /** In a few words: the eggs are past it. */
  readonly past: string;
  readonly eggs: string;
}

export function stageInFrench(stage: string): StageInFrench {
  const called = stageCalled(stage)?.fr;
  const the = called?.the ?? `le stade « ${stage} »`;
  const [auxiliary, participle] = called?.done ?? ['ont', `passé le stade « ${stage} »`];
  const not = auxiliary === 'ont' ? 'n’ont' : 'ne sont';
  return {
    name: called?.name ?? (stage === FERTILISED ? 'fécondation' : stage),
    the,
    of: the.startsWith('le ') ? `du ${the.slice(3)}` : `de ${the}`,
    to: the.startsWith('le ') ? `au ${the.slice(3)}` : `à ${the}`,
    expected: `${the.charAt(0).toUpperCase()}${the.slice(1)} est ${called?.gender === 'f' ? 'attendue' : 'attendu'}`,
    probably: `${auxiliary} probablement ${participle}`,
    notYet: `${not} probablement pas encore ${participle}`,
    past: called?.past ?? `stade « ${stage} » passé`,
    eggs: called?.eggs ?? (stage === FERTILISED ? 'fécondés' : stage),
  };
}
