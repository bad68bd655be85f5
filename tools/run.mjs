import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * Where each tool's own program lies. Started through Node rather than through `node_modules/.bin`, because those are
 * shell scripts that Windows cannot start without a shell.
 */
const programs = {
  eslint: 'eslint/bin/eslint.js',
  knip: 'knip/bin/knip.js',
  playwright: 'playwright/cli.js',
  prettier: 'prettier/bin/prettier.cjs',
  'svelte-check': 'svelte-check/bin/svelte-check',
  'svelte-kit': '@sveltejs/kit/svelte-kit.js',
  tsc: 'typescript/bin/tsc',
  vite: 'vite/bin/vite.js',
  vitest: 'vitest/vitest.mjs',
};

/** Bytes of output that may be kept back; Node's own limit of 1 MiB ends a talkative one. */
const OUTPUT_LIMIT = 64 * 1024 * 1024;

/**
 * Runs one of the project's tools to its end, without standard input.
 * @param {keyof typeof programs} name
 * @param {readonly string[]} args
 * @param {{ output?: 'shown' | 'on failure' | 'none', env?: Record<string, string> }} [options] whether to show what
 *   the tool prints (`on failure`: afterwards, on standard error); what to add to the environment
 * @returns {boolean} whether it ended with status 0
 */
export function runTool(name, args, { output = 'shown', env = {} } = {}) {
  const ran = spawnSync(process.execPath, [join(root, 'node_modules', programs[name]), ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    encoding: 'utf8',
    stdio: output === 'shown' ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'],
    maxBuffer: OUTPUT_LIMIT,
  });
  const well = ran.status === 0;
  if (output === 'on failure' && !well) process.stderr.write(`${ran.stdout}${ran.stderr}`);
  if (ran.error) console.error(`${name}: ${ran.error.message}`);
  return well;
}

/**
 * Runs one of the project's tools beside others, without standard input.
 * @param {keyof typeof programs} name
 * @param {readonly string[]} args
 * @param {{ print: (text: string) => void, env?: Record<string, string> }} options what takes all that the tool prints, piece
 *   by piece; what to add to the environment
 * @returns {Promise<boolean>} whether it ended with status 0
 */
export function runBeside(name, args, { print, env = {} }) {
  const running = spawn(process.execPath, [join(root, 'node_modules', programs[name]), ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  for (const stream of [running.stdout, running.stderr]) stream.setEncoding('utf8').on('data', print);
  return new Promise((resolve) => {
    running.on('error', (error) => {
      print(`${name}: ${error.message}\n`);
      resolve(false);
    });
    running.on('close', (status, signal) => {
      if (signal !== null) print(`${name}: ended by ${signal}\n`);
      resolve(status === 0);
    });
  });
}
