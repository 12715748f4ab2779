/** Why what was asked was not done: read out at once. */
export function Refusal({ text }: { text: string | null | undefined }) {
  return text === null || text === undefined ? null : (
    <p class="refusal" role="alert">
      {text}
    </p>
  );
}
