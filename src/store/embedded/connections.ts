import type { DuckDBConnection } from '@duckdb/node-api';

/** Gives a connection to one piece of work at a time: an answer read in pieces dies when another query begins. */
export interface Connections {
  use<T>(work: (connection: DuckDBConnection) => Promise<T>): Promise<T>;
}

/** The connection of one running write: its statements queue up behind each other. */
export class OneConnection implements Connections {
  private last: Promise<unknown> = Promise.resolve();

  constructor(readonly connection: DuckDBConnection) {}

  use<T>(work: (connection: DuckDBConnection) => Promise<T>): Promise<T> {
    const turn = this.last.then(() => work(this.connection));
    this.last = turn.catch(() => undefined);
    return turn;
  }
}

/** A few connections that readers share. */
export class ReadConnections implements Connections {
  private readonly idle: DuckDBConnection[] = [];
  private readonly waiting: ((connection: DuckDBConnection) => void)[] = [];
  private open = 0;
  private busy = 0;
  private drained: (() => void) | null = null;

  constructor(
    private readonly connect: () => Promise<DuckDBConnection>,
    private readonly most = 4,
  ) {}

  async use<T>(work: (connection: DuckDBConnection) => Promise<T>): Promise<T> {
    const connection = await this.take();
    this.busy++;
    try {
      return await work(connection);
    } finally {
      this.busy--;
      this.giveBack(connection);
      if (this.busy === 0) this.drained?.();
    }
  }

  /** Waits for the readers at work, then closes every connection. */
  async close(): Promise<void> {
    if (this.busy > 0) {
      await new Promise<void>((resolve) => {
        this.drained = resolve;
      });
    }
    for (const connection of this.idle.splice(0)) connection.closeSync();
    this.open = 0;
  }

  private async take(): Promise<DuckDBConnection> {
    const free = this.idle.pop();
    if (free !== undefined) return free;
    if (this.open < this.most) {
      this.open++;
      try {
        return await this.connect();
      } catch (error) {
        this.open--;
        throw error;
      }
    }
    return new Promise((resolve) => {
      this.waiting.push(resolve);
    });
  }

  private giveBack(connection: DuckDBConnection): void {
    const next = this.waiting.shift();
    if (next === undefined) this.idle.push(connection);
    else next(connection);
  }
}
