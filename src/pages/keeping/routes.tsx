import { Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { type SettingRow, settingRows } from '../../settings/index.js';
import type { Verified } from '../../store/index.js';
import { say as sayRemark } from '../../words/index.js';
import { Frame, SameAs } from '../parts/frame.js';
import { type View, viewOf } from '../view.js';

/** Copies of the record, whether it is whole, and the settings: a coordinator's page. */
export function keepingPages(): Hono<Environment> {
  return new Hono<Environment>().get('/keeping', async (c) => {
    const { group, settings } = c.var;
    const loads = await group.loads();
    const verified = c.req.query('check') === 'now' ? await group.verify() : null;
    return c.html(
      <KeepingPage
        view={await viewOf(c)}
        loads={loads.filter(({ withdrawn }) => withdrawn === null).length}
        verified={verified}
        settings={settingRows(settings)}
      />,
    );
  });
}

interface KeepingProps {
  readonly view: View;
  /** Loads that stand. */
  readonly loads: number;
  /** null until it is asked for. */
  readonly verified: Verified | null;
  readonly settings: readonly SettingRow[];
}

function KeepingPage({ view, loads, verified, settings }: KeepingProps) {
  const { say } = view;
  return (
    <Frame
      view={view}
      title={say('page-keeping-title', {})}
      answer={say('page-keeping-answer', { loads })}
      cautions={false}
    >
      <section>
        <h2>{say('page-keeping-backup', {})}</h2>
        <p>{say('page-keeping-backup-what', {})}</p>
        <p>
          <a class="button" href="/api/v1/backup" download>
            {say('page-keeping-backup-do', {})}
          </a>
        </p>
      </section>
      <section>
        <h2>{say('page-keeping-open', {})}</h2>
        <p>{say('page-keeping-open-what', {})}</p>
        <p>
          <a class="button quiet" href="/api/v1/export.zip" download>
            {say('page-keeping-open-do', {})}
          </a>
        </p>
      </section>
      <section id="check">
        <h2>{say('page-keeping-check', {})}</h2>
        {verified === null ? (
          <p>{say('page-keeping-check-what', {})}</p>
        ) : (
          <Found view={view} of={verified} />
        )}
        <p>
          <a class="button quiet" href="/keeping?check=now#check">
            {say('page-keeping-check-do', {})}
          </a>
        </p>
      </section>
      <SettingsInForce view={view} rows={settings} />
      <SameAs view={view} json="/api/v1/settings" />
    </Frame>
  );
}

function Found({ view: { say, language }, of }: { view: View; of: Verified }) {
  const { loads, readings, findings } = of;
  if (findings.length === 0)
    return (
      <p class="note" role="status">
        {say('cli-verified', { loads, readings })}
      </p>
    );
  return (
    <div class="note" role="status">
      <p>{say('cli-verify-found', { count: findings.length })}</p>
      <ul>
        {findings.map((finding) => (
          <li>{sayRemark(language, finding)}</li>
        ))}
      </ul>
    </div>
  );
}

function SettingsInForce({ view: { say }, rows }: { view: View; rows: readonly SettingRow[] }) {
  const told = rows.some(({ origin }) => origin !== null);
  return (
    <section>
      <h2 id="settings">{say('page-keeping-settings', {})}</h2>
      <p>{say('page-keeping-settings-what', {})}</p>
      <div class="scroll" tabindex={0} role="region" aria-labelledby="settings">
        <table>
          <thead>
            <tr>
              <th scope="col">{say('column-setting', {})}</th>
              <th scope="col">{say('column-value', {})}</th>
              {told ? <th scope="col">{say('column-origin', {})}</th> : null}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ setting, value, origin }) => (
              <tr>
                <th scope="row">
                  <code>{setting}</code>
                  <br />
                  <small>{say('settings-what', { setting })}</small>
                </th>
                <td>
                  {value === null || (Array.isArray(value) && value.length === 0)
                    ? '–'
                    : typeof value === 'object'
                      ? JSON.stringify(value)
                      : String(value)}
                </td>
                {told ? <td>{origin === null ? '' : say('settings-origin', origin)}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
