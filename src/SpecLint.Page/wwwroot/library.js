// The library in its worker, as promises.

const worker = new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
const waiting = new Map();
let last = 0;
let start;

/** What the library says of itself once it runs: { version, words }. */
export const ready = new Promise((resolve, reject) => { start = { resolve, reject }; });

worker.onmessage = ({ data }) => {
  if (data.ready) return start.resolve(data.ready);
  if (data.failed) return start.reject(new Error(data.failed));
  const call = waiting.get(data.id);
  waiting.delete(data.id);
  if ('error' in data) call.reject(new Error(data.error));
  else call.resolve(data.result);
};
worker.onerror = (e) => start.reject(new Error(e.message));

/** Calls the library; answers come in the order of the calls. */
export function call(name, ...args) {
  return new Promise((resolve, reject) => {
    const id = ++last;
    waiting.set(id, { resolve, reject });
    worker.postMessage({ id, name, args });
  });
}

/** Puts files of a book: a list of { path, bytes }. */
export function putAll(files) {
  return Promise.all(files.map(({ path, bytes }) => call('Put', path, bytes)));
}
