import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { Frame } from '../../pages/parts/frame.js';
import { viewOf } from '../../pages/view.js';
import type { Environment } from '../environment.js';

type Description = ReturnType<OpenAPIHono<Environment>['getOpenAPI31Document']>;

/** The API's description for people: made from the same document, without any script. */
export async function referencePage(c: Context<Environment>, description: Description): Promise<Response> {
  const view = await viewOf(c);
  const { say } = view;
  const routes = Object.entries(description.paths ?? {}).flatMap(([path, methods]) =>
    Object.entries(methods ?? {}).map(([method, operation]) => ({
      name: `${method.toUpperCase()} /api/v1${path}`,
      summary: summaryOf(operation),
      operation,
    })),
  );
  return c.html(
    <Frame view={view} title={say('page-api-title', {})} answer={say('page-api-answer', {})} current="help">
      <p>{say('page-api-what', {})}</p>
      <p>
        <a href="/api/v1/openapi.json">openapi.json</a> (OpenAPI 3.1)
      </p>
      <div class="reference" lang="en">
        <h2 lang={view.language}>{say('page-api-routes', {})}</h2>
        {routes.map(({ name, summary, operation }) => (
          <One name={name} summary={summary} what={operation} />
        ))}
        <h2 lang={view.language}>{say('page-api-schemas', {})}</h2>
        {Object.entries(description.components?.schemas ?? {}).map(([name, schema]) => (
          <One name={name} summary="" what={schema} />
        ))}
      </div>
    </Frame>,
  );
}

function One({ name, summary, what }: { name: string; summary: string; what: unknown }) {
  return (
    <details>
      <summary>
        <code>{name}</code> {inCode(summary)}
      </summary>
      <pre>{JSON.stringify(what, null, 1)}</pre>
    </details>
  );
}

/** A summary's names between backticks are set as code. */
function inCode(summary: string) {
  return summary.split('`').map((piece, i) => (i % 2 === 1 ? <code>{piece}</code> : piece));
}

function summaryOf(operation: unknown): string {
  return typeof operation === 'object' && operation !== null && 'summary' in operation
    ? String(operation.summary)
    : '';
}
