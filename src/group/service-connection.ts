import { request as httpRequest, type IncomingMessage } from 'node:http';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { deserialize } from 'node:v8';
import type { Owner } from '../store/owner.js';
import type { CallArguments, CallName } from './calls.js';
import { type GroupRemark, RemoteRefused } from './remote-refused.js';

/**
 * Who is gone refuses at once, and another program answers something else. Only a service that is busy is slow: whoever
 * gave it up after a few seconds would find the folder held by it.
 */
const HELLO_MILLISECONDS = 30_000;

/** How the service says that it refuses: the remark itself, to be said in the language of whoever asked. */
export interface RefusedAnswer {
  readonly remark: GroupRemark;
  readonly exit: 1 | 2;
}

/** The way to the service that owns a data folder, opened with the token it left there. */
export class ServiceConnection {
  constructor(
    private readonly address: string,
    private readonly token: string,
  ) {}

  /** null where nobody answers at the address the owner left, or not the owner. */
  static async to({ address, token }: Owner): Promise<ServiceConnection | null> {
    if (address === null) return null;
    const connection = new ServiceConnection(address, token);
    try {
      const answer = await connection.send('GET', '/owner/hello', null, HELLO_MILLISECONDS);
      answer.resume();
      return answer.statusCode === 204 ? connection : null;
    } catch {
      return null;
    }
  }

  /** @throws RemoteRefused for what the group refuses. */
  async call<Name extends CallName, Result>(name: Name, said: CallArguments<Name>): Promise<Result> {
    return this.ask(`/owner/call/${name}`, said);
  }

  /** What is not a call to the group. */
  async ask<Result>(path: string, said: unknown): Promise<Result> {
    const answer = await this.send('POST', path, JSON.stringify(said));
    return deserialize(await taken(await unrefused(answer)));
  }

  /** Bytes as they come. */
  async bytes(path: string): Promise<Readable> {
    return unrefused(await this.send('POST', path, '{}'));
  }

  /** Text as it comes. */
  async *text(path: string, said: unknown): AsyncGenerator<string> {
    const answer = await unrefused(await this.send('POST', path, JSON.stringify(said)));
    answer.setEncoding('utf8');
    for await (const chunk of answer) yield String(chunk);
  }

  /** Sends a file; the id it waits under. */
  async file(name: string, bytes: Readable): Promise<string> {
    const path = `/owner/files?name=${encodeURIComponent(name)}`;
    const answer = await unrefused(await this.send('PUT', path, bytes));
    return (await taken(answer)).toString('utf8');
  }

  private send(
    method: string,
    path: string,
    body: string | Readable | null,
    milliseconds = 0,
  ): Promise<IncomingMessage> {
    return new Promise((resolve, reject) => {
      const request = httpRequest(new URL(path, this.address), {
        method,
        headers: { Authorization: `Bearer ${this.token}`, 'Content-Type': 'application/octet-stream' },
        agent: false,
        timeout: milliseconds,
      });
      request.on('response', resolve);
      request.on('error', reject);
      request.on('timeout', () => request.destroy(new Error('no answer')));
      if (body === null || typeof body === 'string') request.end(body ?? undefined);
      else pipeline(body, request).catch(reject);
    });
  }
}

async function taken(answer: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of answer) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** @throws RemoteRefused or an Error where the service did not do what it was asked. */
async function unrefused(answer: IncomingMessage): Promise<IncomingMessage> {
  const status = answer.statusCode ?? 0;
  if (status >= 200 && status < 300) return answer;
  const body = await taken(answer);
  if (status === 422) {
    const { remark, exit }: RefusedAnswer = deserialize(body);
    throw new RemoteRefused(remark, exit);
  }
  throw new Error(`the service answered ${status}`);
}
