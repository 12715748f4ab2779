/** What people call one of a list's things; its id where it has no name, or is not there. */
export function nameIn(
  things: readonly { readonly id: string; readonly name?: string | null | undefined }[],
  id: string,
): string {
  return things.find((one) => one.id === id)?.name ?? id;
}
