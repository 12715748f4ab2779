/** Rows of a plain comma-separated text without quotes, header dropped. */
export function csvRows(text: string): string[][] {
  return text
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.trim().split(','));
}
