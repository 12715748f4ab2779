import { userInfo } from 'node:os';

/** The name the catalogue remembers for what is done from this terminal. */
export function whoAmI(): string {
  try {
    return userInfo().username;
  } catch {
    // A user id without an account (containers) has no name.
    return String(process.getuid?.() ?? '-');
  }
}
