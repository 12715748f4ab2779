import { z } from 'zod';
import { roles } from '../roles.js';
import type { AccountRow, Accounts } from './accounts.js';

/** What `underice account` asks, of the file itself or of the service that owns it. */
export const accountsCall = z.discriminatedUnion('do', [
  z.object({ do: z.literal('list') }),
  z.object({
    do: z.literal('add'),
    name: z.string(),
    role: z.enum(roles),
    password: z.string(),
    who: z.string(),
  }),
  z.object({ do: z.literal('remove'), name: z.string(), who: z.string() }),
]);
export type AccountsCall = z.infer<typeof accountsCall>;

/** Does it, and says who has an account then. @throws HttpRefused */
export async function changeAccounts(accounts: Accounts, said: unknown): Promise<readonly AccountRow[]> {
  const call = accountsCall.parse(said);
  if (call.do === 'add') await accounts.add(call.name, call.role, call.password, call.who);
  if (call.do === 'remove') await accounts.remove(call.name, call.who);
  return accounts.list();
}
