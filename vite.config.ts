import { fileURLToPath } from 'node:url';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';
import { chunkOf } from './tools/chunkOf.mjs';

/** What jsPDF would load to turn HTML or SVG into pages. It gets lines and text only, and every visitor keeps the whole site. */
const neverLoaded = ['canvg', 'dompurify', 'html2canvas'];
const absent = fileURLToPath(new URL('./tools/absent.mjs', import.meta.url));

export default defineConfig({
  plugins: [sveltekit()],
  resolve: { alias: neverLoaded.map((find) => ({ find, replacement: absent })) },
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
