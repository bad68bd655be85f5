/**
 * `npm start`: builds the site and serves it on this machine until Ctrl-C. PORT sets the first port to try.
 */
import { join } from 'node:path';
import { portFrom } from './port.mjs';
import { root } from './root.mjs';
import { runTool } from './run.mjs';
import { serveFolder } from './serve.mjs';

/** @returns {Promise<void>} settles once the site is being served */
async function start() {
  const port = portFrom(process.env['PORT']);
  console.log('Building the site …');
  if (!runTool('vite', ['build'], { output: 'on failure' })) throw new Error('the site could not be built');
  const site = await serveFolder({ folder: join(root, 'build'), port });
  if (site.port !== port) console.log(`Port ${port} is taken; using ${site.port}.`);
  console.log(`Wedgewright is at ${site.address} (Ctrl-C ends it)`);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, () => void site.close());
}

start().catch((error) => {
  console.error(`npm start: ${error instanceof Error ? error.message : error}`);
  process.exitCode = 1;
});
