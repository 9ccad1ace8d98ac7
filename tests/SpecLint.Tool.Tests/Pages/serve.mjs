// A server of static files on this machine, for tests: it notes every request.
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize } from 'node:path';

const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.wasm': 'application/wasm', '.json': 'application/json', '.webmanifest': 'application/manifest+json', '.svg': 'image/svg+xml' };

export function serve(root) {
  const asked = [];
  return new Promise((resolve) => {
    const server = createServer(async (request, answer) => {
      const path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
      asked.push(path);
      try {
        const bytes = await readFile(join(root, normalize(path.endsWith('/') ? path + 'index.html' : path)));
        answer.writeHead(200, { 'content-type': TYPES[extname(path)] ?? (path.endsWith('/') ? TYPES['.html'] : 'application/octet-stream') });
        answer.end(bytes);
      } catch {
        answer.writeHead(404);
        answer.end();
      }
    });
    server.listen(0, '127.0.0.1', () => resolve({ address: `http://127.0.0.1:${server.address().port}/`, asked, close: () => { server.close(); server.closeAllConnections(); } }));
  });
}
