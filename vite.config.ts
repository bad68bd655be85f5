import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [sveltekit()],
  // Without this, dynamic imports are folded into the worker and it grows thirtyfold.
  worker: { format: 'es' },
  // What most pages share comes in a few files and not in two dozen small ones.
  environments: {
    client: {
      build: {
        rolldownOptions: {
          output: {
            codeSplitting: {
              groups: [
                { name: 'base', test: /node_modules\/(?:svelte|@sveltejs|clsx|esm-env|devalue)\// },
                {
                  name: 'shared',
                  test: /src\/lib\/(?:state|views|project|layout|geometry|plan|stand)\/|node_modules\/valibot\//,
                  minShareCount: 3,
                },
              ],
            },
          },
        },
      },
    },
  },
});
