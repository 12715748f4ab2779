import { Agent as HttpAgent } from 'node:http';
import { Agent as HttpsAgent } from 'node:https';
import { HttpError, InfluxDB, setLogger, type WriteApi } from '@influxdata/influxdb-client';
import type { ServerAddress } from '../folder.js';
import { StoreRefused } from '../refused.js';
import { type AnswerSeries, parsedAnswer } from './answer.js';
import { DEFAULT_PATIENCE, patiently } from './patience.js';

/** Longest one request may take before it counts as lost, milliseconds. */
const REQUEST_PATIENCE = 30_000;
/** Bodies to a server on this very machine are not packed: packing takes longer than sending. */
const LOOPBACK = /^(localhost|127\.|\[?::1)/;
const PACK_FROM_BYTES = 1000;

// Refusals are said by whoever asked, in their language; the client would print them.
setLogger({ error: () => undefined, warn: () => undefined });

/** One database on an InfluxDB server, through its client: line protocol in, InfluxQL out. */
export class InfluxServer {
  private readonly writer: WriteApi;

  private constructor(
    readonly address: ServerAddress,
    private readonly client: InfluxDB,
    private readonly agent: HttpAgent,
    /** Of the server: 1 for 1.x. */
    readonly major: number,
  ) {
    this.writer = client.getWriteApi(address.organisation ?? '', address.database, 'ms', {
      // The client's own batching loses points and says nothing: every batch is one record, sent and awaited by us.
      batchSize: 1e9,
      maxBatchBytes: 1e9,
      flushInterval: 0,
      maxRetries: 0,
      gzipThreshold: LOOPBACK.test(new URL(address.url).hostname) ? 1e12 : PACK_FROM_BYTES,
    });
    if (major === 1) this.writer.path = `/write?db=${encodeURIComponent(address.database)}&precision=ms`;
  }

  /** @throws StoreRefused where nobody answers, or something that is no InfluxDB. */
  static async connect(address: ServerAddress): Promise<InfluxServer> {
    const { url, user, password, token } = address;
    const secure = url.startsWith('https:');
    const agent = secure ? new HttpsAgent({ keepAlive: true }) : new HttpAgent({ keepAlive: true });
    const timeout = Math.min(REQUEST_PATIENCE, address.patience ?? DEFAULT_PATIENCE);
    const basic = Buffer.from(`${user ?? ''}:${password ?? ''}`).toString('base64');
    const client = new InfluxDB({
      url,
      timeout,
      transportOptions: { agent },
      ...(token === null ? {} : { token }),
      ...(user === null ? {} : { headers: { Authorization: `Basic ${basic}` } }),
    });
    try {
      return new InfluxServer(address, client, agent, await majorOf(client, address));
    } catch (error) {
      agent.destroy();
      throw error;
    }
  }

  /** Writes one batch of lines; resolves once the server has them. The same batch twice is the same as once. */
  async write(lines: string): Promise<void> {
    await patiently(this.address, async () => {
      this.writer.writeRecord(lines);
      await this.writer.flush();
    });
  }

  /** The series a statement answers with, instants in epoch milliseconds. */
  query(statement: string, { onDatabase = true } = {}): Promise<readonly AnswerSeries[]> {
    const { database } = this.address;
    const path = `/query?epoch=ms&chunked=true&chunk_size=20000${
      onDatabase ? `&db=${encodeURIComponent(database)}` : ''
    }`;
    const headers = { 'content-type': 'application/x-www-form-urlencoded', accept: 'application/json' };
    return patiently(this.address, async () => {
      const abort = new AbortController();
      try {
        const body = `q=${encodeURIComponent(statement)}`;
        const pieces: Uint8Array[] = [];
        const chunks = this.client.transport.iterate(path, body, {
          method: 'POST',
          headers,
          signal: abort.signal,
        });
        for await (const chunk of chunks) pieces.push(chunk);
        return parsedAnswer(Buffer.concat(pieces).toString('utf8'));
      } finally {
        abort.abort();
      }
    });
  }

  /** A document of the 2.x API; null where the server has none there. */
  async document(path: string): Promise<unknown> {
    return patiently(this.address, async () => {
      try {
        return await this.client.transport.request(path, '', { method: 'GET' });
      } catch (error) {
        if (error instanceof HttpError && error.statusCode === 404) return null;
        throw error;
      }
    });
  }

  close(): void {
    this.writer.dispose();
    this.agent.destroy();
  }
}

async function majorOf(client: InfluxDB, address: ServerAddress): Promise<number> {
  const found: { version: string | null } = { version: null };
  const otherKind = () => new StoreRefused({ code: 'server-other-kind', with: { url: address.url } });
  try {
    await patiently(address, () =>
      client.transport.request('/ping', '', { method: 'GET' }, (headers) => {
        const said = headers['x-influxdb-version'];
        found.version = typeof said === 'string' ? said : null;
      }),
    );
  } catch (error) {
    // Something answers, but neither this nor anything an InfluxDB would.
    const wrong =
      error instanceof StoreRefused && ['server-failed', 'server-denied'].includes(error.remark.code);
    if (wrong && found.version === null) throw otherKind();
    throw error;
  }
  const major = /^v?(\d+)\./.exec(found.version ?? '')?.[1];
  if (major === undefined) throw otherKind();
  return Number(major);
}
