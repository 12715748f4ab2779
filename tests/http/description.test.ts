import { Validator } from '@seriousme/openapi-schema-validator';
import { beforeAll, describe, expect, it } from 'vitest';
import { api } from '../../src/http/api/index.js';
import { readSettings } from '../../src/settings/index.js';
import { ask, sampleFolder, service } from './service.js';

let at = '';
let description: Record<string, unknown> = {};
beforeAll(async () => {
  at = (await service(await sampleFolder())).address;
  description = (await ask(at, '/api/v1/openapi.json')).body;
}, 60_000);

describe('the description of the API', () => {
  it('is OpenAPI 3.1, by a public validator', async () => {
    const validator = new Validator();
    const result = await validator.validate(structuredClone(description));
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
    expect(validator.version).toBe('3.1');
  });

  it('describes every route there is, and no other', () => {
    const { settings } = readSettings({ folder: '/nowhere', file: null, env: {}, flags: {} });
    const served = api(settings)
      .routes.filter(({ method }) => method !== 'ALL')
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)(\{[^}]*\})?/g, '{$1}')}`)
      .filter((route) => !['GET /', 'GET /openapi.json'].includes(route));
    const paths: Record<string, object> = Object(description.paths);
    const described = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect([...new Set(served)].sort()).toEqual(described.sort());
    expect(described.length).toBeGreaterThan(25);
  });

  it('is readable for people, from the same place, without a script', async () => {
    const page = await ask(at, '/api/v1');
    expect(page.text).toContain('/stations/{station}/record');
    expect(page.text).not.toContain('<script');
    expect(page.text).not.toMatch(/(src|href)="https?:/);
    expect((await ask(at, '/api/v1/')).headers.get('Location')).toBe('/api/v1');
  });
});
