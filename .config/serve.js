import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';

const BUILT = fileURLToPath(new URL('../.build/editor', import.meta.url));

/** What the page may load: files of its own origin. Everything else is forbidden, so that nothing can leave the machine. WebAssembly may be compiled: text is shaped by it. */
const POLICY = [
  "default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "worker-src 'self'", "style-src 'self'", "font-src 'self'", "img-src 'self' data: blob:",
  "connect-src 'self'", "manifest-src 'self'", "base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'",
].join('; ');

/** The first two let the page share memory with its worker, which is how a newer evaluation stops an older one at once. */
const HEADERS = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

/** A page elsewhere can make a name of its own lead to this machine; it cannot make the browser send one of these. */
const LOOPBACK = /^(?:localhost|127\.0\.0\.1|\[::1\])(?::[0-9]{1,5})?$/i;

/**
 * Serves the built editor on the loopback address, to nobody else. Port 0 takes any free one. Rejects with the system's
 * error when the port cannot be had.
 */
export function serve({ port, folder = BUILT }) {
  // The folder may be built anew while it is served: hence files are looked up anew for each request ("dev").
  const files = sirv(folder, { dev: true, etag: true, setHeaders: keep });
  const server = createServer((request, response) => answer(files, request, response));
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve({ address: `http://127.0.0.1:${server.address().port}/`, close: () => closed(server) });
    });
  });
}

function answer(files, request, response) {
  for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
  if (!LOOPBACK.test(request.headers.host ?? '')) return refuse(response, 403, 'Open the page at the address that the server printed.');
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return refuse(response, 405, 'There are only files to read here.');
  }
  // Nothing here is large enough to be read in parts, and a part that ends before it begins would be an exception.
  delete request.headers.range;
  return files(request, response, () => refuse(response, 404, 'There is no such file here.'));
}

/** Names in `assets` change with their content; any other file may be another one tomorrow. */
function keep(response, path) {
  response.setHeader('Cache-Control', path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache');
}

function refuse(response, status, says) {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' });
  response.end(`${says}\n`);
}

function closed(server) {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
