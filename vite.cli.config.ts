import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Bundles each headless entry into one file that needs Node alone. */
export default defineConfig({
  logLevel: 'error',
  resolve: { alias: { $lib: at('./src/lib') } },
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: 'dist',
    target: 'node20',
    rolldownOptions: {
      input: {
        plan: at('./src/command/plan.ts'),
        compare: at('./src/command/compare.ts'),
        sweep: at('./src/command/sweep.ts'),
        search: at('./src/command/search.ts'),
        prove: at('./src/command/prove.ts'),
        place: at('./src/command/place.ts'),
        schema: at('./src/command/schema.ts'),
        bench: at('./bench/run.ts'),
      },
      output: { entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
    },
  },
});
