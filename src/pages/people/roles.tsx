import { type Role, roles } from '../../http/roles.js';
import type { View } from '../view.js';

/** Picks one of the three roles, each with what it may do. */
export function RoleField({ view, chosen, label }: { view: View; chosen: Role; label?: string }) {
  return (
    <label class="wide">
      {label ?? view.say('page-people-role', {})}
      <select name="role">
        {roles.map((role) => (
          <option value={role} selected={role === chosen}>
            {view.say('page-people-may', { role })}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The role a form names. */
export function roleNamed(given: string): Role {
  return roles.find((role) => role === given) ?? 'reader';
}
