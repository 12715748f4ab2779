import type { Channel, DeliveryState } from '../../store/index.js';
import { dayAndTime } from '../../words/index.js';
import type { View } from '../view.js';

/** One way of one message. */
export interface DeliveryRow {
  readonly at: number;
  readonly to: string | null;
  readonly subject: string;
  readonly channel: Channel;
  readonly state: DeliveryState;
  readonly tries: number;
  readonly next: number;
  /** The last answer, in words. */
  readonly answer: string | null;
  readonly seenBy: string | null;
}

/** Every message, its state and the last answer, newest first. */
export function Deliveries({ view, rows, zone }: { view: View; rows: readonly DeliveryRow[]; zone: string }) {
  const { say, language } = view;
  return (
    <section>
      <h2>{say('page-messages-list', {})}</h2>
      {rows.length === 0 ? (
        <p>{say('page-messages-none', {})}</p>
      ) : (
        <div class="scroll deliveries" tabindex={0} role="region" aria-label={say('page-messages-list', {})}>
          <table>
            <thead>
              <tr>
                <th scope="col">{say('page-messages-when', {})}</th>
                <th scope="col">{say('page-messages-what', {})}</th>
                <th scope="col">{say('page-messages-who', {})}</th>
                <th scope="col">{say('page-messages-state', {})}</th>
                <th scope="col">{say('page-messages-way', {})}</th>
                <th scope="col">{say('page-messages-last', {})}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ at, to, subject, channel, state, tries, next, answer, seenBy }) => (
                <tr>
                  <td>{dayAndTime(language, at, zone)}</td>
                  <td>{subject}</td>
                  <td>{to ?? say('page-messages-gone', {})}</td>
                  <td>
                    {say('page-messages-state-name', {
                      state,
                      tries,
                      next: dayAndTime(language, next, zone),
                    })}
                    {seenBy === null ? null : (
                      <div class="small">{say('page-messages-seen', { by: seenBy })}</div>
                    )}
                  </td>
                  <td>{say('page-messages-way-name', { channel })}</td>
                  <td>{answer ?? ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
