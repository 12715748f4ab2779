/// <reference lib="dom" />

/** One thing written down, as the phone keeps it until the service has it, and a while after. */
export interface Kept {
  readonly id: string;
  readonly kind: string;
  readonly fields: Readonly<Record<string, unknown>>;
  readonly who: string;
  /** The phone's clock when it was written down, ISO. */
  readonly entered: string;
  /** Photographs not sent yet; their names move into `fields` as they are. */
  readonly photos: readonly ArrayBuffer[];
  readonly position: boolean;
  readonly state: 'unsent' | 'taken' | 'waiting' | 'before';
  /** Why it waits or was not taken, in words of the service. */
  readonly why: string | null;
  readonly photoWhy: string | null;
  /** When the phone learned that the service has it, ISO. */
  readonly sent?: string;
  /** What is to be heard of it, in words of the service. */
  readonly heard?: readonly string[];
}

let opened: Promise<IDBDatabase> | null = null;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open('underice-field', 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore('entries', { keyPath: 'id' });
      asked.result.createObjectStore('kept');
    };
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
  return opened;
}

/** Resolves once the phone has written it to its disk; rejects where it has no room. */
async function inStore<T>(
  name: 'entries' | 'kept',
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const transaction = (await database()).transaction(name, mode, { durability: 'strict' });
  return new Promise((resolve, reject) => {
    const asked = work(transaction.objectStore(name));
    transaction.oncomplete = () => resolve(asked.result);
    transaction.onabort = () => reject(transaction.error ?? asked.error);
    transaction.onerror = () => reject(transaction.error ?? asked.error);
  });
}

export const keepEntry = (entry: Kept): Promise<unknown> =>
  inStore('entries', 'readwrite', (store) => store.put(entry));

export async function entries(): Promise<Kept[]> {
  const all: Kept[] = await inStore('entries', 'readonly', (store) => store.getAll());
  return all.sort((a, b) => (a.entered < b.entered ? 1 : -1));
}

export const forgetEntry = (id: string): Promise<unknown> =>
  inStore('entries', 'readwrite', (store) => store.delete(id));

export const keepValue = (name: string, value: unknown): Promise<unknown> =>
  inStore('kept', 'readwrite', (store) => store.put(value, name));

export const keptValue = <T>(name: string): Promise<T | undefined> =>
  inStore('kept', 'readonly', (store): IDBRequest<T | undefined> => store.get(name));

/** An id no other phone makes; works without a secure context too. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
