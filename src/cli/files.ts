import { open } from 'node:fs/promises';
import { CommandRefused } from './refused.js';

/** A season file is a few kilobytes; what is larger than this is some other file (bytes). */
const LARGEST_TEXT = 16 * 1024 * 1024;

/** A text file, UTF-8. @throws CommandRefused where it cannot be read or is far too large to be one. */
export async function readTextFile(file: string): Promise<string> {
  const refused = () => new CommandRefused({ code: 'cli-file-unreadable', with: { file } });
  const opened = await open(file).catch(() => {
    throw refused();
  });
  try {
    const stat = await opened.stat();
    if (!stat.isFile() || stat.size > LARGEST_TEXT) throw refused();
    return await opened.readFile('utf8');
  } finally {
    await opened.close();
  }
}
