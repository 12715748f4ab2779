const DAY = 86_400_000;

const shifted = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00Z`) + days * DAY).toISOString().slice(0, 10);

/** The day after a local date, and the one before. */
export const dayAfter = (date: string): string => shifted(date, 1);
export const dayBefore = (date: string): string => shifted(date, -1);
