import type { FeedShown } from '../../feeds/index.js';
import { dayAndTime } from '../../words/index.js';
import type { View } from '../view.js';

/** A feed with its last answer in words. */
export interface FeedLine extends FeedShown {
  readonly answer: string | null;
}

/** Where each feed stands. */
export function FeedTable({ view, feeds, zone }: { view: View; feeds: readonly FeedLine[]; zone: string }) {
  const { say, language } = view;
  const time = (at: number | null | undefined) => (at == null ? '–' : dayAndTime(language, at, zone));
  return (
    <section>
      <h2>{say('page-feeds-title', {})}</h2>
      {feeds.length === 0 ? (
        <p>{say('page-feeds-none', {})}</p>
      ) : (
        <div class="scroll" tabindex={0} role="region" aria-label={say('page-feeds-title', {})}>
          <table>
            <thead>
              <tr>
                <th scope="col">{say('page-feeds-what', {})}</th>
                <th scope="col">{say('page-messages-state', {})}</th>
                <th scope="col">{say('page-messages-last', {})}</th>
                <th scope="col">{say('page-feeds-fresh', {})}</th>
                <th scope="col">{say('page-feeds-tried', {})}</th>
                <th scope="col">{say('page-feeds-next', {})}</th>
              </tr>
            </thead>
            <tbody>
              {feeds.map(({ id, from, row, answer }) => (
                <tr>
                  <th scope="row">
                    {id}
                    <div class="small">{withoutQuery(from)}</div>
                  </th>
                  <td>{say('page-feeds-state', { state: row?.state ?? 'never' })}</td>
                  <td>{answer ?? ''}</td>
                  <td>{time(row?.fresh)}</td>
                  <td>{time(row?.tried)}</td>
                  <td>{id.startsWith('push ') ? '–' : time(row?.next)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p class="small">{say('page-feeds-push', {})}</p>
    </section>
  );
}

/** What follows a question mark may be somebody's key. */
function withoutQuery(from: string): string {
  return from.split('?')[0] ?? from;
}
