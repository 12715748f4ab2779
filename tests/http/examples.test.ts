import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from 'vitest';
import { ask, sampleFolder, service } from './service.js';

/* The lines of docs/api.md, run as a reader would run them (R: r-base-core; Python: python3). */
const page = readFileSync(new URL('../../docs/api.md', import.meta.url), 'utf8');
const lines = (language: string) => new RegExp(`\`\`\`${language}\n([^]*?)\`\`\``).exec(page)?.[1] ?? '';
const languages = [
  { language: 'r', program: 'Rscript', option: '-e', expected: ['measured', '2026-'] },
  { language: 'python', program: 'python3', option: '-c', expected: ['hatch 2026-', '3 None'] },
];

let at = '';
beforeAll(async () => {
  at = (await service(await sampleFolder())).address;
}, 60_000);

describe('the examples of the API', () => {
  it('ask for addresses that the API describes', async () => {
    const description = JSON.parse((await ask(at, '/api/v1/openapi.json')).text);
    const described = Object.keys(description.paths).map(
      (path) => new RegExp(`^${path.replace(/\{\w+\}/g, '[^/]+')}$`),
    );
    const asked = [...page.matchAll(/"(?:\/api\/v1)?(\/[a-z][^"?]*)/g)].map(([, path]) => path ?? '');
    expect(asked.length).toBeGreaterThan(5);
    for (const path of asked.filter((one) => one !== '/api/v1'))
      expect(
        described.some((pattern) => pattern.test(path)),
        path,
      ).toBe(true);
  });

  for (const { language, program, option, expected } of languages) {
    it(`run in ${program}`, async () => {
      const { stdout } = await promisify(execFile)(program, [option, lines(language)], {
        env: { ...process.env, UNDERICE_ADDRESS: at },
      });
      for (const text of expected) expect(stdout).toContain(text);
    });
  }
});
