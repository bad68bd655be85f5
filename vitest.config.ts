import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const shared = () => ({
  // Not the whole kit: it writes into .svelte-kit/ whenever it starts, under the feet of a build that runs meanwhile.
  plugins: [svelte()],
  resolve: { alias: { $lib: fileURLToPath(new URL('./src/lib', import.meta.url)) } },
});

/** Files that put another module in a module's place, and so must not share any. */
const APART = 'tests/**/*.apart.test.ts';

const unit = {
  environment: 'node' as const,
  setupFiles: ['tests/seed.ts'],
  // Properties take their time on a busy machine; none waits for anything.
  testTimeout: 120_000,
  hookTimeout: 120_000,
};

const browser = {
  environment: 'node' as const,
  globalSetup: ['tests/browser/serve.ts'],
  // A busy machine may take its time; what is missing is told by the waits inside (see `PATIENCE` in `page.ts`).
  testTimeout: 240_000,
  hookTimeout: 120_000,
  expect: { poll: { timeout: 60_000 } },
  // Each with a browser of its own; more would wait for the processor.
  maxWorkers: 2,
};

export default defineConfig({
  test: {
    // The default leaves one processor idle.
    maxWorkers: '100%',
    projects: [
      {
        ...shared(),
        test: {
          ...unit,
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', APART],
          // All files of a worker share the modules that they import: loading them anew takes longer than most tests.
          isolate: false,
        },
      },
      {
        ...shared(),
        test: { ...unit, name: 'apart', include: [APART] },
      },
      {
        ...shared(),
        test: { ...browser, name: 'browser', include: ['tests/browser/**/*.test.ts'] },
      },
      // Of `npm run test:long`.
      {
        ...shared(),
        test: { ...unit, name: 'long', include: ['tests/long/*.long.ts'] },
      },
      {
        ...shared(),
        test: { ...browser, name: 'long-browser', include: ['tests/long/*.page.ts'] },
      },
    ],
  },
});
