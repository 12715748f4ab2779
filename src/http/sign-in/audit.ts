import { appendFile, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';

const entrySchema = z.object({
  at: z.string(),
  who: z.string(),
  /** 'signed-in', 'refused', 'account-made' … */
  did: z.string(),
  /** Whom or what it concerned. */
  what: z.string(),
});
export type AuditEntry = z.infer<typeof entrySchema>;

/** Who signed in, who was refused, who changed accounts: one line a happening, only ever added to. */
export class Audit {
  private readonly file: string;
  private writing: Promise<void> = Promise.resolve();

  constructor(
    folder: string,
    private readonly now: () => number,
  ) {
    this.file = join(folder, 'underice.audit.jsonl');
  }

  note(who: string, did: string, what = ''): Promise<void> {
    const line = JSON.stringify({ at: new Date(this.now()).toISOString(), who, did, what });
    this.writing = this.writing
      .catch(() => undefined)
      .then(() => appendFile(this.file, `${line}\n`, { mode: 0o600 }));
    return this.writing;
  }

  /** The newest `most` entries, newest first. */
  async list(most: number): Promise<readonly AuditEntry[]> {
    await this.writing.catch(() => undefined);
    const text = await readFile(this.file, 'utf8').catch(() => '');
    const lines = text.trimEnd().split('\n').slice(-most).reverse();
    return lines.flatMap((line) => {
      try {
        return [entrySchema.parse(JSON.parse(line))];
      } catch {
        // A line cut short by a pulled plug.
        return [];
      }
    });
  }
}
