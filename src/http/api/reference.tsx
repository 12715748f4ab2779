import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { Environment } from '../environment.js';

type Description = ReturnType<OpenAPIHono<Environment>['getOpenAPI31Document']>;

const STYLE = `body{font:1rem/1.5 system-ui,sans-serif;max-width:60rem;margin:0 auto;padding:1rem}
code,pre{font-family:ui-monospace,monospace}code{overflow-wrap:anywhere}pre{overflow-x:auto;background:#f2f2f2;color:#111;padding:.75rem}
dt{font-weight:600}summary{cursor:pointer;padding:.25rem 0}:root{color-scheme:light dark}
@media(prefers-color-scheme:dark){body{background:#10181b;color:#e6eaea}pre{background:#1b2428;color:#e6eaea}a{color:#8fd3e0}}`;

/** The API's description for people: made from the same document, without any script. */
export function referencePage(
  c: Context<Environment>,
  description: Description,
): Response | Promise<Response> {
  const routes = Object.entries(description.paths ?? {}).flatMap(([path, methods]) =>
    Object.entries(methods ?? {}).map(([method, operation]) => ({ path, method, operation })),
  );
  return c.html(
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>Underice: the API</title>
        <style>{STYLE}</style>
      </head>
      <body>
        <main>
          <h1>Underice: the API</h1>
          <p>{description.info.description}</p>
          <p>
            <a href="/api/v1/openapi.json">openapi.json</a> (OpenAPI 3.1)
          </p>
          <h2>Routes</h2>
          {routes.map(({ path, method, operation }) => (
            <details>
              <summary>
                <code>
                  {method.toUpperCase()} /api/v1{path}
                </code>{' '}
                {summaryOf(operation)}
              </summary>
              <pre>{JSON.stringify(operation, null, 1)}</pre>
            </details>
          ))}
          <h2>Schemas</h2>
          {Object.entries(description.components?.schemas ?? {}).map(([name, schema]) => (
            <details>
              <summary>
                <code>{name}</code>
              </summary>
              <pre>{JSON.stringify(schema, null, 1)}</pre>
            </details>
          ))}
        </main>
      </body>
    </html>,
  );
}

function summaryOf(operation: unknown): string {
  return typeof operation === 'object' && operation !== null && 'summary' in operation
    ? String(operation.summary)
    : '';
}
