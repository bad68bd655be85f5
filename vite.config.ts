import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';
import { chunkOf } from './tools/chunkOf.mjs';

export default defineConfig({
  plugins: [sveltekit()],
  // Without this, dynamic imports are folded into the worker and it grows thirtyfold.
  worker: { format: 'es' },
  // What pages share comes in a few files and not in two dozen small ones.
  environments: {
    client: {
      build: {
        rolldownOptions: {
          output: {
            codeSplitting: {
              groups: [{ name: chunkOf() }],
            },
          },
        },
      },
    },
  },
});
