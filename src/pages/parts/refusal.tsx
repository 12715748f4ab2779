const HERE = 'refused';

/** What the fields carry that were refused together, as a name and a password are. */
export const refusedHere = (text: string | null | undefined): Record<string, string> =>
  text === null || text === undefined ? {} : { 'aria-describedby': HERE };

/** Why what was asked was not done: read out at once. */
export function Refusal({ text }: { text: string | null | undefined }) {
  return text === null || text === undefined ? null : (
    <p class="refusal" role="alert" id={HERE}>
      {text}
    </p>
  );
}
