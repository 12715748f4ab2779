import type { LoadRow } from '../../group/index.js';
import type { SpooledFile } from '../../http/received/spool.js';
import { Csrf, Frame, SameAs, WorkedOut } from '../parts/frame.js';
import { mayAdd, mayEdit, type View } from '../view.js';

interface ListProps {
  readonly view: View;
  readonly waiting: readonly SpooledFile[];
  readonly loads: readonly LoadRow[];
  readonly stationName: (station: string) => string;
  /** So many layouts are kept. */
  readonly layouts: number;
  readonly refusal?: string;
}

/** Where files come in, those that wait, and every load that was ever accepted. */
export function DownloadsPage({ view, waiting, loads, stationName, layouts, refusal }: ListProps) {
  const { say } = view;
  const standing = loads.filter(({ withdrawn }) => withdrawn === null).length;
  return (
    <Frame
      view={view}
      title={say('page-downloads-title', {})}
      answer={say('page-downloads-answer', { waiting: waiting.length, loads: standing })}
      current="downloads"
      scripts={['downloads.js']}
      cautions={false}
    >
      {refusal === undefined ? null : (
        <p class="refusal" role="alert">
          {refusal}
        </p>
      )}
      {waiting.length === 0 ? null : <Waiting view={view} waiting={waiting} />}
      {mayAdd(view) ? <Bring view={view} /> : null}
      <p>
        <a href="/downloads/layouts">{say('page-layouts-link', { count: layouts })}</a>
      </p>
      <h2>{say('page-downloads-loads', {})}</h2>
      {loads.length === 0 ? (
        <p>{say('page-downloads-no-loads', {})}</p>
      ) : (
        <Loads view={view} loads={loads} stationName={stationName} />
      )}
      <p>
        <WorkedOut view={view} about="understood" />
      </p>
      <SameAs view={view} json="/api/v1/loads" csv="/api/v1/loads.csv" />
    </Frame>
  );
}

function Bring({ view }: { view: View }) {
  const { say } = view;
  return (
    <>
      <form method="post" action="/downloads" enctype="multipart/form-data" class="drop" id="drop">
        <Csrf view={view} />
        <label>
          <strong>{say('page-downloads-drop', {})}</strong>
          <input type="file" name="files" multiple required />
        </label>
        <p class="small">{say('page-downloads-kinds', {})}</p>
        <label>
          {say('page-downloads-sheet', {})}
          <input name="sheet" maxlength={100} />
        </label>
        <div class="actions">
          <button type="submit" data-sending={say('page-downloads-sending', {})}>
            {say('page-downloads-send', {})}
          </button>
        </div>
      </form>
      <details>
        <summary>{say('page-downloads-paste', {})}</summary>
        <form method="post" action="/downloads/pasted">
          <Csrf view={view} />
          <label>
            {say('page-downloads-paste-name', {})}
            <input name="name" required maxlength={100} value={say('page-downloads-pasted', {})} />
          </label>
          <label>
            {say('page-downloads-paste', {})}
            <textarea name="text" rows={8} required></textarea>
          </label>
          <div class="actions">
            <button type="submit">{say('page-downloads-look', {})}</button>
          </div>
        </form>
      </details>
    </>
  );
}

function Waiting({ view, waiting }: { view: View; waiting: readonly SpooledFile[] }) {
  return (
    <section class="sheet">
      <h2>{view.say('page-downloads-waiting', {})}</h2>
      <ul>
        {waiting.map(({ id, name }) => (
          <li>
            <a href={`/downloads/${id}`}>{name}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Loads({ view, loads, stationName }: Omit<ListProps, 'waiting' | 'layouts' | 'refusal'>) {
  const { say } = view;
  return (
    <section class="scroll" tabindex={0} aria-label={say('page-downloads-loads', {})}>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('page-column-load', {})}</th>
            <th scope="col">{say('page-column-file', {})}</th>
            <th scope="col">{say('page-column-stations', {})}</th>
            <th scope="col" class="number">
              {say('page-column-readings', {})}
            </th>
            <th scope="col">{say('page-column-when', {})}</th>
            {mayEdit(view) ? (
              <th scope="col" class="no-print">
                {say('page-column-change', {})}
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {[...loads].reverse().map((row) => (
            <tr class={row.withdrawn === null ? undefined : 'done'}>
              <td>{row.load}</td>
              <td>{row.file}</td>
              <td>{row.stations.map(stationName).join(', ')}</td>
              <td class="number">{view.whole(row.readings)}</td>
              <td class="date">{view.long(row.at / DAY)}</td>
              {mayEdit(view) ? (
                <td class="no-print">
                  {row.withdrawn === null ? (
                    <form method="post" action={`/downloads/loads/${row.load}/withdraw`}>
                      <Csrf view={view} />
                      <button
                        type="submit"
                        class="link"
                        aria-label={say('page-downloads-withdraw-what', { load: row.load })}
                      >
                        {say('page-downloads-withdraw', {})}
                      </button>
                    </form>
                  ) : (
                    say('page-downloads-withdrawn', { day: row.withdrawn / DAY })
                  )}
                </td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const DAY = 86_400_000;
