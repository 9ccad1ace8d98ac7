// Reads and writes zip archives (APPNOTE 6.3): entries that are stored or deflated, no encryption, no zip64. Sizes are bounded before
// anything is unpacked, and each entry again while it is.
import { words } from './strings.js';

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => { let c = n; for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1; return c >>> 0; });

function crc32(bytes) {
  let c = 0xffffffff;
  for (const b of bytes) c = TABLE[(c ^ b) & 255] ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}

async function inflate(bytes, most) {
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const parts = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) { await reader.cancel(); throw new Error(words.zip.larger); }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/** The entries of an archive that are wanted: a list of { path, bytes }. */
export async function readZip(bytes, wanted, { most = 20000, largest = 1 << 20 } = {}) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  while (end >= Math.max(0, bytes.length - 65557) && view.getUint32(end, true) !== 0x06054b50) end--;
  if (end < 0 || view.getUint32(end, true) !== 0x06054b50) throw new Error(words.zip.none);
  const count = view.getUint16(end + 10, true);
  if (count > most) throw new Error(words.zip.many);
  let at = view.getUint32(end + 16, true);
  const files = [];
  let left = 0;
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== 0x02014b50) throw new Error(words.zip.list);
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const [crc, packed, size] = [view.getUint32(at + 16, true), view.getUint32(at + 20, true), view.getUint32(at + 24, true)];
    const [name, extra, note] = [view.getUint16(at + 28, true), view.getUint16(at + 30, true), view.getUint16(at + 32, true)];
    const start = view.getUint32(at + 42, true);
    const path = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + name));
    at += 46 + name + extra + note;
    if (path.endsWith('/')) continue;
    if (!wanted(path) || flags & 1 || size > largest || (method !== 0 && method !== 8)) { left++; continue; }
    const data = start + 30 + view.getUint16(start + 26, true) + view.getUint16(start + 28, true);
    const raw = bytes.subarray(data, data + packed);
    const plain = method === 0 ? raw.slice() : await inflate(raw, size);
    if (plain.length !== size || crc32(plain) !== crc) throw new Error(words.zip.entry(path));
    files.push({ path, bytes: plain });
  }
  return { files, left };
}

/** An archive of files, stored as they are, in the order given. */
export function writeZip(files) {
  const parts = [];
  const list = [];
  let at = 0;
  for (const { path, bytes } of files) {
    const name = new TextEncoder().encode(path);
    const head = (signature, length) => { const h = new DataView(new ArrayBuffer(length)); h.setUint32(0, signature, true); return h; };
    const common = (h, o) => { h.setUint16(o, 20, true); h.setUint16(o + 2, 0x800, true); h.setUint16(o + 8, 0x21, true); h.setUint32(o + 10, crc32(bytes), true); h.setUint32(o + 14, bytes.length, true); h.setUint32(o + 18, bytes.length, true); h.setUint16(o + 22, name.length, true); };
    const local = head(0x04034b50, 30);
    common(local, 4);
    const central = head(0x02014b50, 46);
    central.setUint16(4, 20, true);
    common(central, 6);
    central.setUint32(42, at, true);
    parts.push(local.buffer, name, bytes);
    list.push(central.buffer, name);
    at += 30 + name.length + bytes.length;
  }
  const size = list.reduce((n, p) => n + p.byteLength, 0);
  const last = new DataView(new ArrayBuffer(22));
  last.setUint32(0, 0x06054b50, true);
  last.setUint16(8, files.length, true);
  last.setUint16(10, files.length, true);
  last.setUint32(12, size, true);
  last.setUint32(16, at, true);
  return new Blob([...parts, ...list, last.buffer], { type: 'application/zip' });
}
