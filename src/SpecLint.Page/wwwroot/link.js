// A recipe in the fragment of an address: deflated UTF-8 in base64url. A fragment is not sent to a server.

const LONGEST = 40_000;

async function through(bytes, stream) {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > LONGEST * 4) { await reader.cancel(); throw new Error('too long'); }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

export async function toFragment(text) {
  const packed = await through(new TextEncoder().encode(text), new CompressionStream('deflate-raw'));
  let binary = '';
  for (const b of packed) binary += String.fromCharCode(b);
  return '#recipe=' + btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** The text of a fragment; null where it holds none. */
export async function fromFragment(fragment) {
  if (!fragment.startsWith('#recipe=')) return null;
  try {
    const binary = atob(fragment.slice(8).replaceAll('-', '+').replaceAll('_', '/'));
    const text = new TextDecoder().decode(await through(Uint8Array.from(binary, (c) => c.charCodeAt(0)), new DecompressionStream('deflate-raw')));
    return text.length <= LONGEST ? text : null;
  } catch {
    return null;
  }
}
