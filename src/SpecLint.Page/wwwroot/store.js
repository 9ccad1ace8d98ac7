// What is kept on this device: the text at each keystroke in local storage, which is written at once; files of the book in a database.

const TEXT = 'speclint-bench';
const NAME = 'speclint-bench';
const STORE = 'files';

export function load() {
  try {
    return JSON.parse(localStorage.getItem(TEXT) ?? '{}');
  } catch {
    return {};
  }
}

/** Stores the state; null stores nothing. */
export function save(state) {
  try {
    if (state === null) localStorage.removeItem(TEXT);
    else localStorage.setItem(TEXT, JSON.stringify(state));
  } catch {
    // Full or forbidden: the page goes on without a memory.
  }
}

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'path' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function run(mode, work) {
  let database;
  try {
    database = await open();
    const transaction = database.transaction(STORE, mode);
    const result = work(transaction.objectStore(STORE));
    return await new Promise((resolve, reject) => {
      transaction.oncomplete = () => resolve(result?.result);
      transaction.onerror = () => reject(transaction.error);
    });
  } catch {
    return undefined;
  } finally {
    database?.close();
  }
}

export const loadFiles = async () => (await run('readonly', (s) => s.getAll())) ?? [];
export const saveFiles = (files) => run('readwrite', (s) => { files.forEach((f) => s.put(f)); });
export const dropFile = (path) => run('readwrite', (s) => { s.delete(path); });
export const dropFiles = () => run('readwrite', (s) => { s.clear(); });

/** Clears all that the page has stored of its user. */
export async function clearAll() {
  await dropFiles();
  localStorage.removeItem(TEXT);
}
