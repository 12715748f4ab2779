/** A place of our own to go on to; anything else leads to the first page. */
export function ownPath(to: string | undefined): string {
  return to !== undefined && /^\/(?![/\\])[^\p{C}]*$/u.test(to) ? to : '/';
}
