import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder and those above it that are absent, one by one: Node's own recursive way never ends where a folder
 * above cannot hold any (`/proc` on Linux, nodejs/node issue 31481: memory).
 *
 * @throws the system's own error where one cannot be made
 */
export function madeFolder(dir: string): void {
  const missing: string[] = [];
  for (let at = resolve(dir); !existsSync(at); at = dirname(at)) missing.unshift(at);
  for (const folder of missing) {
    try {
      mkdirSync(folder);
    } catch (error) {
      // Somebody else may have made it meanwhile.
      if (!existsSync(folder)) throw error;
    }
  }
}
