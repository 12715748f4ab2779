import { createServer, type Server } from 'node:http';
import { createAdaptorServer } from '@hono/node-server';
import type { Hono } from 'hono';
import type { Settings } from '../settings/index.js';
import type { Environment } from './environment.js';
import { HttpRefused } from './refused.js';

/** How long a request that has begun may go on once the service is told to end. */
const GRACE_SECONDS = 20;

export interface Listening {
  /** Where it answers, for people on this computer. */
  readonly address: string;
  readonly port: number;
  /** Takes nothing new, lets what has begun come to its end, then closes. */
  close(): Promise<void>;
}

/** Starts listening. @throws HttpRefused where the port is taken or the address is not this computer's. */
export async function listen(app: Hono<Environment>, settings: Settings): Promise<Listening> {
  const { host, port } = settings;
  const made = createAdaptorServer({
    fetch: app.fetch,
    createServer,
    serverOptions: {
      requestTimeout: settings.requestSeconds * 1000,
      headersTimeout: Math.min(settings.patienceSeconds, settings.requestSeconds) * 1000,
      keepAliveTimeout: 5000,
      connectionsCheckingInterval: 2000,
      maxHeaderSize: 16_384,
    },
  });
  if (!('closeIdleConnections' in made)) throw new TypeError('not an HTTP/1.1 server');
  await begin(made, host, port);
  const at = made.address();
  const bound = typeof at === 'object' && at !== null ? at.port : port;
  return {
    address: `http://${named(host)}:${bound}`,
    port: bound,
    close: () => end(made),
  };
}

function begin(server: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES')
        reject(new HttpRefused(503, { code: 'http-port-taken', with: { host, port } }));
      else if (error.code === 'EADDRNOTAVAIL' || error.code === 'ENOTFOUND')
        reject(new HttpRefused(503, { code: 'http-no-such-host', with: { host } }));
      else reject(error);
    });
    server.listen(port, host, resolve);
  });
}

async function end(server: Server): Promise<void> {
  const closed = new Promise<void>((resolve) => server.close(() => resolve()));
  server.closeIdleConnections();
  const late = setTimeout(() => server.closeAllConnections(), GRACE_SECONDS * 1000);
  await closed;
  clearTimeout(late);
}

/** A host as an address names it; who listens everywhere is reached on this computer at loopback. */
function named(host: string): string {
  if (host === '0.0.0.0' || host === '::') return '127.0.0.1';
  return host.includes(':') ? `[${host}]` : host;
}
