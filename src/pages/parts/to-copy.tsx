import type { View } from '../view.js';

/** An address or a token to take along: a field to select from, and a button where the script runs. */
export function ToCopy({ view, label, text }: { view: View; label: string; text: string }) {
  return (
    <div class="to-copy">
      <label>
        {label}
        <input readonly value={text} spellcheck={false} />
      </label>
      <button type="button" class="quiet" hidden data-copied={view.say('page-copied', {})}>
        {view.say('page-copy', {})}
      </button>
    </div>
  );
}
