import { type Role, roles } from '../../http/roles.js';
import type { View } from '../view.js';

/** Picks one of the three roles; what each may do stands below, where a phone cuts no word of it. */
export function RoleField({ view, chosen, label }: { view: View; chosen: Role; label?: string }) {
  return (
    <>
      <label class="wide">
        {label ?? view.say('page-people-role', {})}
        <select name="role">
          {roles.map((role) => (
            <option value={role} selected={role === chosen}>
              {view.say(`http-role-${role}`, {})}
            </option>
          ))}
        </select>
      </label>
      <ul class="small wide roles">
        {roles.map((role) => (
          <li>{view.say('page-people-may', { role })}</li>
        ))}
      </ul>
    </>
  );
}

/** The role a form names. */
export function roleNamed(given: string): Role {
  return roles.find((role) => role === given) ?? 'reader';
}
