import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/**
 * The rooms of src/lib and the rooms each may import from. Everything else is refused, so an arrow that the
 * architecture does not draw cannot be drawn by accident.
 * @type {Record<string, string[]>}
 */
const opensTo = {
  geometry: [],
  project: ['geometry'],
  layout: ['geometry', 'project'],
  acoustics: ['geometry', 'project', 'layout'],
  stand: ['geometry', 'project', 'layout'],
  workshop: ['geometry', 'project', 'layout', 'stand'],
  plan: ['geometry', 'project', 'layout', 'acoustics', 'stand', 'workshop'],
  drawing: ['geometry', 'project', 'layout', 'acoustics', 'stand', 'workshop', 'plan'],
  files: ['geometry', 'project', 'layout', 'acoustics', 'stand', 'workshop', 'plan', 'drawing'],
  state: ['geometry', 'project', 'layout', 'acoustics', 'stand', 'workshop', 'plan', 'drawing', 'files'],
  views: ['geometry', 'project', 'layout', 'acoustics', 'stand', 'workshop', 'plan', 'drawing', 'files', 'state'],
};
const rooms = Object.keys(opensTo);
const pure = rooms.filter((room) => room !== 'state' && room !== 'views');

/** @param {string} room */
const arrows = (room) => ({
  files: [`src/lib/${room}/**`],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            regex: `^\\$lib/(?:${rooms.filter((other) => other !== room && !opensTo[room]?.includes(other)).join('|') || '(?!)'})/`,
            message: `"${room}" may import from ${opensTo[room]?.join(', ') || 'no other room'} only: imports run one way (see DEVELOPERS.md).`,
          },
          { regex: '^\\.\\./', message: 'Write $lib/room/file.ts for another room, ./file.ts within one.' },
          ...(pure.includes(room)
            ? [
                {
                  regex: '^(?:node:|svelte|\\$app|\\$env|\\$service-worker|vite)',
                  message: `"${room}" runs in a page, a worker and the command alike: no DOM, Svelte or Node.`,
                },
              ]
            : []),
        ],
      },
    ],
    ...(pure.includes(room)
      ? {
          'no-restricted-globals': [
            'error',
            ...['window', 'document', 'navigator', 'localStorage', 'process', 'Buffer', 'self'].map((name) => ({
              name,
              message: `"${room}" runs in a page, a worker and the command alike.`,
            })),
          ],
        }
      : {}),
  },
});

export default ts.config(
  { ignores: ['build/', 'dist/', '.svelte-kit/', 'coverage/', 'node_modules/', '.shots/'] },
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  { files: ['tools/**', 'src/command/**', 'bench/**'], rules: { 'no-console': 'off' } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } },
  },
  ...rooms.map(arrows),
);
