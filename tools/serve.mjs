import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';

/** This machine alone; a name such as `localhost` may mean IPv6 here and IPv4 there. */
const HOST = '127.0.0.1';
const LAST_PORT = 65_535;

/**
 * Files below `_app/immutable` carry their content's hash in their name and never change; all others, the page and the
 * service worker among them, are asked for again each time, so that nobody is left with yesterday's site.
 * @param {import('node:http').ServerResponse} response
 * @param {string} path
 */
function setHeaders(response, path) {
  const immutable = path.includes('/_app/immutable/');
  response.setHeader('Cache-Control', immutable ? 'public, max-age=31536000, immutable' : 'no-cache');
}

/**
 * @param {string} folder
 * @param {string} base
 * @returns {import('node:http').RequestListener}
 */
function listener(folder, base) {
  // `dev` looks at the disk each time: a list made at the start would break when the site is built again meanwhile.
  // The build lays a .gz and a .br beside every text; who takes them gets them.
  const files = sirv(folder, { dev: true, etag: true, gzip: true, brotli: true, setHeaders });
  return (request, response) => {
    const refuse = (/** @type {number} */ status, /** @type {string} */ text) => {
      response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
      response.end(`${text}\n`);
    };
    // What a policy in a <meta> element cannot say.
    response.setHeader('Content-Security-Policy', "frame-ancestors 'none'");
    response.setHeader('X-Content-Type-Options', 'nosniff');
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'Only GET and HEAD here.');
    if (!request.url?.startsWith(base)) return refuse(404, 'Nothing at this address.');
    request.url = request.url.slice(base.length - 1);
    files(request, response, async () => {
      const page = await readFile(join(folder, '404.html')).catch(() => null);
      if (page === null) return refuse(404, 'Nothing at this address.');
      response.writeHead(404, { 'Content-Type': 'text/html; charset=utf-8', 'Cache-Control': 'no-cache' });
      response.end(page);
    });
  };
}

/**
 * @param {import('node:http').Server} server
 * @param {number} port
 * @returns {Promise<boolean>} false when the port is taken
 */
async function listens(server, port) {
  try {
    server.listen(port, HOST);
    await once(server, 'listening');
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE') return false;
    throw error;
  }
}

/**
 * Serves a folder of files on 127.0.0.1 until it is closed.
 * @param {object} options
 * @param {string} options.folder what to serve
 * @param {number} [options.port] the first port to try; the next ones follow while they are taken. 0, the default, lets
 *   the system choose a free one
 * @param {string} [options.base] the sub-folder it appears under, with a slash at both ends; default `/`
 * @returns {Promise<{ address: string, port: number, close: () => Promise<void> }>} `close` also ends open connections
 * @throws {Error} when the port may not be used, or every port from it upwards is taken
 */
export async function serveFolder({ folder, port = 0, base = '/' }) {
  const server = createServer(listener(folder, base));
  let tried = port;
  while (!(await listens(server, tried))) {
    tried += 1;
    if (tried > LAST_PORT) throw new Error(`every port from ${port} to ${LAST_PORT} is taken`);
  }
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('the server has no port');
  return {
    address: `http://${HOST}:${bound.port}${base}`,
    port: bound.port,
    close: async () => {
      const closed = once(server, 'close');
      server.close();
      server.closeAllConnections();
      await closed;
    },
  };
}
