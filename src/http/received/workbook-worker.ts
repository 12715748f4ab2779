import { parentPort, workerData } from 'node:worker_threads';
import readWorkbook from 'read-excel-file/node';
import { csvText } from '../csv.js';
import type { WorkbookRead } from './workbook.js';

/** The thread that reads a workbook: one that is too large ends the thread and nothing else. */
const { path, sheet }: { path: string; sheet: string | null } = workerData;
parentPort?.postMessage(await read());

async function read(): Promise<WorkbookRead> {
  const sheets = await readWorkbook(path);
  const names = sheets.map((one) => one.sheet);
  const chosen = sheet === null ? sheets[0] : sheets.find((one) => one.sheet === sheet);
  if (chosen === undefined) return { kind: 'no-sheet', sheets: names };
  const lines = chosen.data.map((row) => row.map((cell) => cellText(cell)).join(','));
  return { kind: 'sheet', sheets: names, sheet: chosen.sheet, text: `${lines.join('\n')}\n` };
}

/** Values only: what a formula came to when the workbook was saved. Times in a workbook have no zone. */
function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) {
    const seconds = new Date(Math.round(cell.getTime() / 1000) * 1000);
    return seconds.toISOString().slice(0, 19).replace('T', ' ');
  }
  return typeof cell === 'number' ? String(cell) : csvText(String(cell));
}
