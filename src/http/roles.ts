/** Who may do what: a coordinator everything, a crew member load and note down, a reader look. */
export const roles = ['coordinator', 'crew', 'reader'] as const;
export type Role = (typeof roles)[number];

/**
 * Who asks. `by` says how that is known: nobody has an account yet (open, loopback only), a session, an API token; or it
 * is not known (nobody): then only what needs no sign-in is answered.
 */
export interface Person {
  readonly name: string;
  readonly role: Role;
  readonly by: 'open' | 'session' | 'token' | 'nobody';
}

/** What a crew member may post, beside looking: downloads, observations, tallies, acknowledgements. */
const CREW = [
  /^\/downloads(\/(?!loads\/[^/]+\/withdraw|layouts(\/|$))|$)/,
  /^\/boxes\/[^/]+\/(observed|tally|put-back)$/,
  /^\/spells\/[^/]+\/(acknowledge|settle)$/,
  /^\/api\/v1\/files(\/|$)/,
  /^\/api\/v1\/(loads|observed|visits)$/,
  /^\/api\/v1\/loads$/,
  /^\/api\/v1\/(entries|photographs)$/,
  /^\/autumn\/enter\//,
  /^\/api\/v1\/boxes\/[^/]+\/(observed|tally)$/,
  /^\/api\/v1\/loads$/,
  /^\/api\/v1\/boxes\/[^/]+\/(observed|tally|put-back)$/,
  /^\/api\/v1\/readings$/,
  /^\/api\/v1\/spells\/[^/]+\/(acknowledge|settle)$/,
];

/** What everybody who is signed in may post: it concerns themselves only. */
const OWN = [/^\/sign-out$/, /^\/account(\/|$)/, /^\/api\/v1\/sessions\/[^/]+$/];

/** What only a coordinator may even look at. */
const COORDINATORS = [
  /^\/(accounts|keeping)(\/|$)/,
  /^\/api\/v1\/(accounts|tokens|invitations|audit|people|backup|export\.zip|verify|settings)(\/|$)/,
];

/** The least role a request needs; a path that nobody thought of needs a coordinator to change anything. */
export function roleNeeded(method: string, path: string): Role {
  if (COORDINATORS.some((pattern) => pattern.test(path))) return 'coordinator';
  if (method === 'GET' || method === 'HEAD' || OWN.some((pattern) => pattern.test(path))) return 'reader';
  return CREW.some((pattern) => pattern.test(path)) ? 'crew' : 'coordinator';
}

export function mayActAs(role: Role, needed: Role): boolean {
  return roles.indexOf(role) <= roles.indexOf(needed);
}
