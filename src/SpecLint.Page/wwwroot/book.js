// The files of the book: taken in from files, a folder or a zip, kept on this device, given out again.
import { call, putAll } from './library.js';
import { dropFile, loadFiles, saveFiles } from './store.js';
import { readZip, writeZip } from './zip.js';

const LARGEST = 1 << 20;
const MOST = 20_000;
const ENDING = /(^|\/)bar\.json$|\.(drink|prep|ingredient|menu|stock|prices)\.json$/;

/** Path to bytes. */
export const files = new Map();

const isWanted = (path) => ENDING.test(path) && path.length < 400;

/** A path as the book knows it: no way out of the folder, no control character. */
function tidy(path) {
  return path.replaceAll('\\', '/').split('/').filter((p) => p && p !== '.' && p !== '..').join('/').replace(/[\u0000-\u001F\u007F]/g, '');
}

/** A folder above the whole book is taken off, so that paths are those of its root. */
function fromRoot(list) {
  const bar = list.map((f) => f.path).filter((p) => /(^|\/)bar\.json$/.test(p)).sort((a, b) => a.length - b.length)[0];
  const first = list[0]?.path.split('/')[0];
  const root = bar ? bar.slice(0, -'bar.json'.length) : list.every((f) => f.path.includes('/') && f.path.split('/')[0] === first) ? `${first}/` : '';
  return list.map((f) => ({ ...f, path: f.path.startsWith(root) ? f.path.slice(root.length) : f.path }));
}

async function take(list) {
  const chosen = fromRoot(list.map((f) => ({ ...f, path: tidy(f.path) })).filter((f) => f.path));
  for (const { path, bytes } of chosen) files.set(path, bytes);
  await putAll(chosen);
  await saveFiles(chosen);
  return chosen;
}

export async function restore() {
  const kept = await loadFiles();
  for (const { path, bytes } of kept) files.set(path, bytes);
  await putAll(kept);
}

/** Takes in files of an input, a drop or a folder: { taken, left }. */
export async function takeIn(list) {
  const found = [];
  let left = 0;
  for (const file of list.slice(0, MOST)) {
    const path = file.webkitRelativePath || file.path || file.name;
    if (/\.zip$/i.test(path)) {
      const zip = await readZip(new Uint8Array(await file.arrayBuffer()), isWanted, { most: MOST, largest: LARGEST });
      found.push(...zip.files);
      left += zip.left;
    } else if (isWanted(path) && file.size <= LARGEST) {
      found.push({ path, bytes: new Uint8Array(await file.arrayBuffer()) });
    } else {
      left++;
    }
  }
  return { taken: await take(found), left: left + Math.max(0, list.length - MOST) };
}

export async function put(path, text) {
  await take([{ path, bytes: new TextEncoder().encode(text) }]);
}

export async function drop(path) {
  files.delete(path);
  await call('Drop', path);
  await dropFile(path);
}

export const textOf = (path) => new TextDecoder().decode(files.get(path));

export const zip = () => writeZip([...files.keys()].sort().map((path) => ({ path, bytes: files.get(path) })));

/** Files of what was dropped; folders with all below them. To be called while the event is handled. */
export function droppedFiles(transfer) {
  const entries = [...transfer.items].map((i) => i.webkitGetAsEntry?.()).filter(Boolean);
  const plain = [...transfer.files];
  return entries.some((e) => e.isDirectory) ? walkEntries(entries) : Promise.resolve(plain);
}

async function walkEntries(entries) {
  const found = [];
  const waiting = [...entries];
  while (waiting.length > 0 && found.length <= MOST) {
    const entry = waiting.shift();
    if (entry.isDirectory) {
      const reader = entry.createReader();
      for (;;) {
        const some = await new Promise((resolve, reject) => reader.readEntries(resolve, reject));
        if (some.length === 0) break;
        waiting.push(...some);
      }
    } else if (isWanted(entry.fullPath.slice(1)) || /\.zip$/i.test(entry.name)) {
      found.push(Object.assign(await new Promise((resolve, reject) => entry.file(resolve, reject)), { path: entry.fullPath.slice(1) }));
    }
  }
  return found;
}

/** Writes the book into a folder that the user chooses: files that differ, none is taken away. Returns how many were written. */
export async function saveFolder() {
  const root = await showDirectoryPicker({ mode: 'readwrite' });
  let written = 0;
  for (const [path, bytes] of files) {
    const steps = path.split('/');
    let folder = root;
    for (const step of steps.slice(0, -1)) folder = await folder.getDirectoryHandle(step, { create: true });
    const handle = await folder.getFileHandle(steps.at(-1), { create: true });
    const there = new Uint8Array(await (await handle.getFile()).arrayBuffer());
    if (there.length === bytes.length && there.every((b, i) => b === bytes[i])) continue;
    const stream = await handle.createWritable();
    await stream.write(bytes);
    await stream.close();
    written++;
  }
  return written;
}

/** Files of a folder that the browser lets the user choose. */
export async function folderFiles() {
  const found = [];
  const walk = async (folder, prefix) => {
    for await (const [name, handle] of folder.entries()) {
      if (found.length > MOST) return;
      if (handle.kind === 'directory') await walk(handle, `${prefix}${name}/`);
      else if (isWanted(prefix + name)) found.push(Object.assign(await handle.getFile(), { path: prefix + name }));
    }
  };
  await walk(await showDirectoryPicker(), '');
  return found;
}
