import { closeSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { roles } from '../roles.js';

const role = z.enum(roles);

/** What of the accounts is kept; secrets only as hashes, except the one that signs calendar addresses. */
export const accountsSchema = z.object({
  format: z.literal(1),
  /** Signs form tokens and calendar addresses. */
  secret: z.string().length(64),
  accounts: z.array(
    z.object({ name: z.string(), role, password: z.string(), made: z.number(), by: z.string() }),
  ),
  sessions: z.array(
    z.object({ id: z.string(), account: z.string(), since: z.number(), ends: z.number(), agent: z.string() }),
  ),
  tokens: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      role,
      hash: z.string(),
      ends: z.number(),
      made: z.number(),
      by: z.string(),
    }),
  ),
  invitations: z.array(
    z.object({ id: z.string(), role, hash: z.string(), ends: z.number(), made: z.number(), by: z.string() }),
  ),
  /** How often a calendar's address was changed, by calendar. */
  calendars: z.record(z.string(), z.number()),
});
export type AccountsKept = z.infer<typeof accountsSchema>;

const FILE = 'underice.accounts.json';

/** null where nobody has an account and nothing was kept yet. */
export function readAccounts(folder: string): AccountsKept | null {
  let text: string;
  try {
    text = readFileSync(join(folder, FILE), 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
  return accountsSchema.parse(JSON.parse(text));
}

/** Written beside and renamed: whoever pulls the plug leaves the old file or the new one. */
export function writeAccounts(folder: string, kept: AccountsKept): void {
  const path = join(folder, FILE);
  const fresh = `${path}.new`;
  const file = openSync(fresh, 'w', 0o600);
  try {
    writeSync(file, `${JSON.stringify(kept, null, 1)}\n`);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(fresh, path);
}
