import type { DuckDBConnection, DuckDBValue } from '@duckdb/node-api';

/** One row of an answer, its values taken out by name and checked for kind. */
export class Row {
  constructor(private readonly values: Readonly<Record<string, DuckDBValue>>) {}

  number(name: string): number {
    const value = this.values[name];
    if (typeof value === 'number') return value;
    if (typeof value === 'bigint') return Number(value);
    throw new TypeError(`column ${name} holds no number`);
  }

  numberOrNull(name: string): number | null {
    return this.values[name] === null ? null : this.number(name);
  }

  text(name: string): string {
    const value = this.values[name];
    if (typeof value === 'string') return value;
    throw new TypeError(`column ${name} holds no text`);
  }

  textOrNull(name: string): string | null {
    return this.values[name] === null ? null : this.text(name);
  }

  yes(name: string): boolean {
    return this.values[name] === true;
  }
}

/** Runs one statement and gives its rows. Numbers go in as they are: whole ones as BIGINT, others as DOUBLE. */
export async function rows(
  connection: DuckDBConnection,
  sql: string,
  values: readonly (number | string | boolean | null)[] = [],
): Promise<Row[]> {
  const bound = values.map((value) =>
    typeof value === 'number' && Number.isInteger(value) ? BigInt(value) : value,
  );
  const result = await connection.run(sql, bound.length > 0 ? bound : undefined);
  return (await result.getRowObjects()).map((row) => new Row(row));
}

/** The one row a statement gives. */
export async function oneRow(
  connection: DuckDBConnection,
  sql: string,
  values: readonly (number | string | boolean | null)[] = [],
): Promise<Row> {
  const [row] = await rows(connection, sql, values);
  if (row === undefined) throw new Error('the statement gave no row');
  return row;
}

/** Text as an SQL literal, for statements that take no parameters (settings, ATTACH). */
export function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
