/*
 * A river of our own for tests that stand at today: water near 5 °C that wanders, each year another way, so that past
 * winters differ and a download that comes says something.
 */
const DAY = 86_400_000;

export const dayNow = (): number => Math.floor(Date.now() / DAY);

/** °C at an instant. */
export function waterOn(at: number): number {
  const day = at / DAY;
  const year = Math.floor(day / 365);
  const wander = 1.2 * Math.sin(day / 8 + year * 1.9) + 0.9 * Math.sin(year * 2.3);
  return Math.max(0, 5 + wander + 0.3 * Math.sin(day * 2 * Math.PI));
}

/** Daily means of the years before, as a plain table. */
export function pastYears(before: number): string {
  const rows = Array.from({ length: 365 * 4 }, (_, i) => before - 365 * 4 + i).map(
    (day) => `${isoDay(day)},${waterOn(day * DAY + DAY / 2).toFixed(2)}`,
  );
  return ['date,mean water temperature (°C)', ...rows].join('\n');
}

/** A logger's file in English, hourly, its clock stated. */
export function hourly(from: number, to: number): string {
  const rows = hours(from, to).map(
    (at) => `${new Date(at).toISOString().slice(0, 19).replace('T', ' ')},${waterOn(at).toFixed(2)}`,
  );
  return ['Date Time (UTC),Temperature (°C)', ...rows].join('\n');
}

/** The same from a French export: semicolons, decimal commas, day first with month names nowhere. */
export function horaire(from: number, to: number): string {
  const rows = hours(from, to).map((at) => {
    const [date = '', time = ''] = new Date(at).toISOString().split('T');
    return `${date};${time.slice(0, 5)};${waterOn(at).toFixed(2).replace('.', ',')}`;
  });
  return ['Date;Heure (UTC);Température (°C)', ...rows].join('\r\n');
}

/** A few readings on a day that can be read in two orders, in a year that is over in either. */
export function ambiguous(): string {
  const year = new Date().getUTCFullYear() - 1;
  const rows = [10, 11, 12].map((hour) => `03/04/${year} ${hour}:00,4.${hour - 10}`);
  return ['Date Time (UTC),Temperature (°C)', ...rows].join('\n');
}

export function isoDay(day: number): string {
  return new Date(day * DAY).toISOString().slice(0, 10);
}

function hours(from: number, to: number): number[] {
  return Array.from({ length: (to - from) * 24 }, (_, i) => from * DAY + i * 3_600_000);
}
