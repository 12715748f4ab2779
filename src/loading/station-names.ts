/** Longest name the season file takes. */
const LONGEST = 64;

/**
 * A station's name in a file as the season would write it: "Upper Pool (3)" is `Upper-Pool-3`. Empty where the
 * name holds no letter or digit.
 */
export function asStationId(name: string): string {
  return name
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{N}._-]+/gu, '-')
    .slice(0, LONGEST)
    .replaceAll(/^[._-]+|[._-]+$/g, '');
}

/** The station a file means: its id as it stands, else the one whose id, else whose name, differs only in case and spacing. */
export function stationNamed<S extends { readonly id: string; readonly name?: string }>(
  name: string,
  stations: readonly S[],
): S | undefined {
  const exact = stations.find(({ id }) => id === name);
  if (exact !== undefined) return exact;
  const alike = asStationId(name).toLowerCase();
  const found = stations.filter(({ id }) => id.toLowerCase() === alike);
  if (found.length > 0) return found.length === 1 ? found[0] : undefined;
  const called = stations.filter((one) => asStationId(one.name ?? '').toLowerCase() === alike);
  return called.length === 1 && alike !== '' ? called[0] : undefined;
}

/** Where the air column of a file goes that has the water of a station as well. */
export function airStationOf(id: string): string {
  return `${id}-air`;
}
