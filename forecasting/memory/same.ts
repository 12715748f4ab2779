/** Whether two values say the same to the last bit, typed arrays and NaN included. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || ArrayBuffer.isView(a)) return sameList(a, b);
  if (Array.isArray(b) || ArrayBuffer.isView(b)) return false;
  const [own, other] = [Object.entries(a), new Map(Object.entries(b))];
  return (
    own.length === other.size && own.every(([key, value]) => other.has(key) && same(value, other.get(key)))
  );
}

function sameList(a: object, b: object): boolean {
  const [own, other] = [listed(a), listed(b)];
  if (own === null || other === null || own.length !== other.length) return false;
  for (let i = 0; i < own.length; i++) if (!same(own[i], other[i])) return false;
  return true;
}

function listed(value: object): ArrayLike<unknown> | null {
  if (Array.isArray(value)) return value;
  const isNumbers =
    value instanceof Float64Array ||
    value instanceof Float32Array ||
    value instanceof Int32Array ||
    value instanceof Int16Array ||
    value instanceof Uint16Array ||
    value instanceof Uint8Array;
  return isNumbers ? value : null;
}
