import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [sveltekit()],
  // Without this, dynamic imports are folded into the worker and it grows thirtyfold.
  worker: { format: 'es' },
});
