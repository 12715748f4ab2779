import { beforeAll, describe, expect, it } from 'vitest';
import type { HindcastReport } from '../../forecasting/hindcast/index.js';
import { underice } from '../cli/terminal.js';
import { ask, sampleFolder, service } from './service.js';

/* How good the forecast would have been on the demo's river: page, command and API say the same. */
const JUNE = Date.parse('2026-06-20T00:00Z') / 86_400_000;
let at = '';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
  at = (await service(folder, {}, JUNE)).address;
}, 60_000);

const isReport = (body: Record<string, unknown>): body is Record<string, unknown> & HindcastReport =>
  Array.isArray(body.results) && Array.isArray(body.rows);

async function report(query: string): Promise<HindcastReport> {
  const { status, body } = await ask(at, `/api/v1/hindcast?${query}`);
  if (status !== 200 || !isReport(body)) throw new Error(JSON.stringify(body));
  return body;
}

describe('the hindcast of the demo’s river', () => {
  it('has the same figures on the page, from the command and from the API, and the service answers meanwhile', async () => {
    // The page is asked first: it says how far the work is, and others are served while it goes on.
    const first = await ask(at, '/hindcast');
    const begin = performance.now();
    expect((await ask(at, '/healthz')).status).toBe(200);
    expect(performance.now() - begin).toBeLessThan(1000);
    if (first.headers.get('Refresh') !== null) expect(first.text).toMatch(/It is being worked out/);
    const api = await report('rows=yes');
    const page = await ask(at, '/hindcast?case=under-ice&lead=03-01');
    expect(page.headers.get('Refresh')).toBeNull();

    const asked = ['--case', 'under-ice', '--lead', '03-01', '--lead', '04-01'];
    const said = await underice(['hindcast', ...asked, '--rows', '--json', '--data', folder]);
    const command: HindcastReport = JSON.parse(said.out);
    const few = await report('case=under-ice&lead=03-01&lead=04-01&rows=yes');
    expect(few).toEqual(command);
    const underIce = (of: HindcastReport) =>
      of.results.filter(
        ({ case: one, lead }) => one === 'under-ice' && (lead === '03-01' || lead === '04-01'),
      );
    expect(underIce(api)).toEqual(command.results);

    const [march] = command.results;
    expect(march?.n).toBeGreaterThan(5);
    const figure = (value: number | null | undefined) => (value ?? Number.NaN).toFixed(1);
    const row = [march?.n, figure(march?.mae), figure(march?.bias), figure(march?.p90)];
    const cells = row.map((cell) => `<td class="number">${cell}</td>`).join('');
    expect(page.text.replaceAll('−', '-')).toContain(cells);
    expect(page.text).toContain(`missed by ${figure(march?.mae)} days on average`);
    expect(page.text.match(/<svg/g)).toHaveLength(2);
    for (const { winter } of command.rows)
      expect(page.text).toContain(`${winter}–${String((winter + 1) % 100).padStart(2, '0')}`);
  }, 60_000);

  it('comes as a line for each winter too, and in French', async () => {
    const { text, headers } = await ask(at, '/api/v1/hindcast.csv?case=under-ice&lead=03-01&lead=04-01');
    expect(headers.get('Content-Type')).toMatch(/^text\/csv/);
    const [head, ...lines] = text.trim().split('\r\n');
    expect(head).toMatch(/^case,lead,stage,station,winter,icy,observed,p10,p50,p90,/);
    const { rows } = await report('case=under-ice&lead=03-01&lead=04-01&rows=yes');
    expect(lines).toHaveLength(rows.length);
    expect(lines[0]?.split(',').slice(3, 5)).toEqual([rows[0]?.station, String(rows[0]?.winter)]);
    const french = await ask(at, '/hindcast?case=under-ice&lead=04-01', {
      headers: { 'Accept-Language': 'fr' },
    });
    expect(french.text).toMatch(/la prévision du stade «\u00a0éclosion\u00a0» faite le/);
  });

  it('refuses a table, a stage or a day that is none, in a sentence', async () => {
    expect((await ask(at, '/api/v1/hindcast?table=none')).status).toBe(404);
    const stage = await ask(at, '/api/v1/hindcast?stage=smolt');
    expect([stage.status, String(stage.body.detail)]).toEqual([
      422,
      expect.stringMatching(/no stage "smolt"/),
    ]);
    expect((await ask(at, '/api/v1/hindcast?lead=13-77')).status).toBe(422);
    expect((await ask(at, '/api/v1/hindcast?case=guess')).status).toBe(422);
    expect((await ask(at, '/hindcast?fertilised=never')).status).toBe(422);
  });
});
