import { readFileSync } from 'node:fs';
import adapter from '@sveltejs/adapter-static';

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'));

/** @type {import('@sveltejs/kit').Config} */
export default {
  kit: {
    adapter: adapter({ fallback: undefined, strict: true, precompress: true }),
    // All of a page's styles in the page itself, some ten kilobytes: a dozen small files would hold up its first picture.
    inlineStyleThreshold: 200_000,
    version: { name: version },
    // The layout does it when the page has come to life: fetching the whole site must not hold that up.
    serviceWorker: { register: false },
    typescript: {
      // The tools, the benchmarks and the command's build are checked as well; paths count from .svelte-kit/.
      config: (config) => ({
        ...config,
        include: [...config.include, '../tools/**/*.mjs', '../bench/**/*.ts', '../*.config.ts', '../*.config.js'],
      }),
    },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['none'],
        'script-src': ['self'],
        'style-src': ['self'],
        // Kit's route announcer carries one inline style; this is the hash of that exact text, and a browser test
        // fails on any console message, so a change of the text cannot pass unseen.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self', 'data:', 'blob:'],
        'font-src': ['self'],
        'connect-src': ['self'],
        'worker-src': ['self'],
        'manifest-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['none'],
        'form-action': ['none'],
      },
    },
  },
};
