import { readSeason, type SeasonProblem, SeasonRefused } from '../../src/season/index.js';

/** The problems a text is refused for; fails where it is taken. */
export function problemsOf(text: string): readonly SeasonProblem[] {
  try {
    readSeason(text, 'season.yaml');
  } catch (error) {
    if (error instanceof SeasonRefused) return error.remark.with.problems;
    throw error;
  }
  throw new Error('the season was taken');
}

/** Line, way and code of each problem: "4 boxes.0.site season.no-such". */
export const told = (text: string): string[] =>
  problemsOf(text).map(({ line, path, code }) => `${line} ${path.join('.')} ${code}`);
