import type { View } from '../view.js';

const pages = [
  ['/accounts', 'page-people-title'],
  ['/accounts/tokens', 'page-tokens-title'],
  ['/accounts/audit', 'page-audit-title'],
] as const;

/** The way between the pages on people. */
export function PeoplePlaces({ view, here }: { view: View; here: (typeof pages)[number][0] }) {
  return (
    <p class="actions no-print">
      {pages.map(([href, word]) =>
        href === here ? null : (
          <a class="button quiet" href={href}>
            {view.say(word, {})}
          </a>
        ),
      )}
    </p>
  );
}
