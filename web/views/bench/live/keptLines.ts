import type { Stretch } from "../../../../shared/log/lineOutbox.ts";

/**
 * Lines that the workbench has not acknowledged, kept in the browser's own database so that a reload of the page, or a
 * browser that dies, loses none. Where the browser offers no database they stand in memory alone.
 */
const STORE = "stretches";

let opened: Promise<IDBDatabase> | null = null;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("bollard-lines", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: ["recording", "offset"] });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opened;
}

const all = (recording: string) => IDBKeyRange.bound([recording, 0], [recording, Number.MAX_SAFE_INTEGER]);

async function within<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T | null> {
  try {
    const transaction = (await database()).transaction(STORE, mode);
    const request = work(transaction.objectStore(STORE));
    await new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve();
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
    return request.result;
  } catch {
    return null;
  }
}

/** The recording that lines are for. */
export interface LineOwner {
  readonly project: string;
  readonly recording: string;
  readonly name: string;
}
type KeptStretch = Stretch & LineOwner;

export async function keepStretch(owner: LineOwner, { offset, bytes }: Stretch): Promise<void> {
  await within("readwrite", (store) => store.put({ ...owner, offset, bytes } satisfies KeptStretch));
}

/** Recordings of a project that lines are kept for. */
export async function keptOwners(project: string): Promise<LineOwner[]> {
  const all = ((await within("readonly", (store) => store.getAll())) ?? []) as KeptStretch[];
  const owners = all.filter((one) => one.project === project);
  return owners.filter(({ recording }, at) => owners.findIndex((one) => one.recording === recording) === at);
}

/** Stretches of a recording, in order. */
export async function keptStretches(recording: string): Promise<Stretch[]> {
  return ((await within("readonly", (store) => store.getAll(all(recording)))) ?? []) as Stretch[];
}

/** Forgets what lies wholly before `place`; everything where none is given. */
export async function forgetStretches(recording: string, place?: number): Promise<void> {
  if (place === undefined) {
    await within("readwrite", (store) => store.delete(all(recording)));
    return;
  }
  for (const { offset, bytes } of await keptStretches(recording)) {
    if (offset + bytes.length <= place) await within("readwrite", (store) => store.delete([recording, offset]));
  }
}
