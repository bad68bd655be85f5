import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { request } from 'node:http';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { serveFolder } from '../../tools/serve.mjs';

const outer = mkdtempSync(join(tmpdir(), 'wedgewright-serve-'));
const folder = join(outer, 'site');
const ending: (() => Promise<unknown>)[] = [];

beforeAll(() => {
  mkdirSync(join(folder, '_app/immutable'), { recursive: true });
  writeFileSync(join(outer, 'secret.txt'), 'not for you');
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Here</title>');
  writeFileSync(join(folder, 'app.webmanifest'), '{}');
  writeFileSync(join(folder, 'letters.woff2'), 'x');
  writeFileSync(join(folder, 'service-worker.js'), '');
  writeFileSync(join(folder, '_app/immutable/a.1234.js'), '');
});
afterEach(async () => {
  for (const end of ending.splice(0)) await end();
});
afterAll(() => rmSync(outer, { recursive: true }));

async function served(options: { port?: number; base?: string } = {}) {
  const site = await serveFolder({ folder, ...options });
  ending.push(site.close);
  return site;
}

/** Takes a free port of this machine, and says which. */
async function takePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  ending.push(async () => void (await once(server.close(), 'close')));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}

/** The status for a path sent as it is; fetch would tidy it up first. */
async function statusOf(port: number, path: string, method = 'GET'): Promise<number | undefined> {
  const [response] = await once(request({ host: '127.0.0.1', port, path, method }).end(), 'response');
  response.resume();
  return response.statusCode;
}

describe('ports', () => {
  test('a taken port gives way to a later one', async () => {
    const taken = await takePort();
    const site = await served({ port: taken });
    expect(site.port).toBeGreaterThan(taken);
    expect(site.address).toBe(`http://127.0.0.1:${site.port}/`);
    expect((await fetch(site.address)).status).toBe(200);
  });

  test('a free port is the one that is used', async () => {
    const first = await served();
    await first.close();
    ending.length = 0;
    expect((await served({ port: first.port })).port).toBe(first.port);
  });

  test('closing frees the port and ends open connections', async () => {
    const { address, close } = await serveFolder({ folder });
    await fetch(address);
    await close();
    await expect(fetch(address)).rejects.toThrow('fetch failed');
  });
});

describe('what is sent', () => {
  // Media types as IANA registers them; text/html carries its charset.
  test.each([
    ['', 'text/html;charset=utf-8', 'no-cache'],
    ['app.webmanifest', 'application/manifest+json', 'no-cache'],
    ['letters.woff2', 'font/woff2', 'no-cache'],
    ['service-worker.js', 'text/javascript', 'no-cache'],
    ['_app/immutable/a.1234.js', 'text/javascript', 'public, max-age=31536000, immutable'],
  ])('%s: %s, kept as %s', async (path, type, cache) => {
    const { address } = await served();
    const { status, headers } = await fetch(new URL(path, address));
    expect([status, headers.get('content-type'), headers.get('cache-control')]).toEqual([200, type, cache]);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
  });

  test('nothing that is not in the folder', async () => {
    const { port } = await served();
    const paths = ['/missing', '/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/%', '/%00', '//', '*'];
    for (const path of paths) expect([path, await statusOf(port, path)]).toEqual([path, path === '//' ? 200 : 404]);
  });

  test('nothing but reading', async () => {
    const { port } = await served();
    expect(await statusOf(port, '/', 'HEAD')).toBe(200);
    expect(await statusOf(port, '/', 'POST')).toBe(405);
  });

  test('below a sub-folder, and only there', async () => {
    const { address, port } = await served({ base: '/some/where/' });
    expect(address).toBe(`http://127.0.0.1:${port}/some/where/`);
    expect(await statusOf(port, '/some/where/')).toBe(200);
    expect(await statusOf(port, '/some/where/letters.woff2')).toBe(200);
    expect(await statusOf(port, '/letters.woff2')).toBe(404);
    expect(await statusOf(port, '/')).toBe(404);
  });
});
