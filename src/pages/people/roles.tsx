import { type Role, roles } from '../../http/roles.js';
import type { View } from '../view.js';

/** Picks one of the three roles; what each may do stands below, where a phone cuts no word of it. */
export function RoleField({ view, chosen, brief = false }: { view: View; chosen: Role; brief?: boolean }) {
  return (
    <>
      <label class="wide">
        {view.say('page-people-role', {})}
        <select name="role">
          {roles.map((role) => (
            <option value={role} selected={role === chosen}>
              {view.say(`http-role-${role}`, {})}
            </option>
          ))}
        </select>
      </label>
      {brief ? null : (
        <ul class="small wide roles">
          {roles.map((role) => (
            <li>{view.say('page-people-may', { role })}</li>
          ))}
        </ul>
      )}
    </>
  );
}

/** The role a form names. */
export function roleNamed(given: string): Role {
  return roles.find((role) => role === given) ?? 'reader';
}
