import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const shared = () => ({
  // Not the whole kit: it writes into .svelte-kit/ whenever it starts, under the feet of a build that runs meanwhile.
  plugins: [svelte()],
  resolve: { alias: { $lib: fileURLToPath(new URL('./src/lib', import.meta.url)) } },
});

export default defineConfig({
  test: {
    projects: [
      {
        ...shared(),
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          setupFiles: ['tests/seed.ts', 'tests/late.ts'],
          // Properties take their time on a busy machine; none waits for anything.
          testTimeout: 120_000,
        },
      },
      {
        ...shared(),
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/serve.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
