/**
 * Numbers texts by their bytes, so that a column of names costs no string per row: the first field with some bytes
 * gets 0, the next new one 1, and so on.
 */
export class ByteDictionary {
  private readonly entries: Uint8Array[] = [];
  private readonly byHash = new Map<number, number[]>();
  private lastId = -1;

  get size(): number {
    return this.entries.length;
  }

  bytes(id: number): Uint8Array {
    return this.entries[id];
  }

  id(b: Uint8Array, start: number, end: number): number {
    if (this.lastId >= 0 && same(this.entries[this.lastId], b, start, end)) return this.lastId;
    let hash = 0x811c9dc5;
    for (let i = start; i < end; i++) hash = Math.imul(hash ^ b[i], 0x01000193);
    const bucket = this.byHash.get(hash);
    for (const id of bucket ?? []) {
      if (same(this.entries[id], b, start, end)) {
        this.lastId = id;
        return id;
      }
    }
    const id = this.entries.length;
    this.entries.push(b.slice(start, end));
    if (bucket === undefined) this.byHash.set(hash, [id]);
    else bucket.push(id);
    this.lastId = id;
    return id;
  }
}

function same(known: Uint8Array, b: Uint8Array, start: number, end: number): boolean {
  if (known.length !== end - start) return false;
  for (let i = known.length - 1; i >= 0; i--) if (known[i] !== b[start + i]) return false;
  return true;
}
