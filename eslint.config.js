import { builtinModules } from 'node:module';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

const placed = ['geometry', 'project', 'layout'];
const made = [...placed, 'acoustics', 'stand', 'workshop'];
const solved = [...made, 'solution'];
const studied = [...solved, 'study', 'proof'];
const written = [...studied, 'drawing', 'files'];

/**
 * The rooms of src/lib and the rooms each may import from. Everything else is refused, so an arrow that the
 * architecture does not draw cannot be drawn by accident.
 * @type {Record<string, string[]>}
 */
const opensTo = {
  geometry: [],
  project: ['geometry'],
  layout: ['geometry', 'project'],
  acoustics: placed,
  stand: placed,
  workshop: [...placed, 'stand'],
  solution: made,
  study: solved,
  proof: solved,
  drawing: studied,
  files: [...studied, 'drawing'],
  document: written,
  workers: [...written, 'document'],
  views: [...written, 'document', 'workers'],
};
const rooms = Object.keys(opensTo);
const pure = rooms.filter((room) => !['document', 'workers', 'views'].includes(room));
const platform = [...builtinModules, 'node', 'svelte', '@sveltejs', '\\$app', '\\$env', '\\$service-worker', 'vite'];
const browserGlobals = ['window', 'document', 'navigator', 'localStorage', 'process', 'Buffer', 'self'];

const NO_PLATFORM = 'runs in a page, a worker and the command alike: no DOM, Svelte or Node.';

/**
 * What a room may not import: regular expressions over the module's name, each with what to tell.
 * @param {string} room
 */
const refusals = (room) => {
  const closed = rooms.filter((other) => other !== room && !opensTo[room]?.includes(other));
  return [
    {
      regex: `^\\$lib/(?:${closed.join('|')})/`,
      message: `"${room}" may import from ${opensTo[room]?.join(', ') || 'no other room'} only: imports run one way (see DEVELOPERS.md).`,
    },
    { regex: '(?:^|/)\\.\\./', message: 'Write $lib/room/file.ts for another room, ./file.ts within one.' },
    ...(pure.includes(room)
      ? [{ regex: `^(?:${platform.join('|')})(?:[:/]|$)`, message: `"${room}" ${NO_PLATFORM}` }]
      : []),
  ];
};

/**
 * The rules that hold the arrows of one room, for import statements, lazy imports and globals.
 * @param {string} room
 * @returns {import('eslint').Linter.Config}
 */
const arrows = (room) => ({
  files: [`src/lib/${room}/**`],
  rules: {
    'no-restricted-imports': ['error', { patterns: refusals(room) }],
    'no-restricted-syntax': [
      'error',
      ...refusals(room).map(({ regex, message }) => ({
        selector: `ImportExpression[source.value=/${regex.replaceAll('/', '\\u002f')}/]`,
        message,
      })),
    ],
    ...(pure.includes(room)
      ? {
          'no-restricted-globals': [
            'error',
            ...browserGlobals.map((name) => ({ name, message: `"${room}" ${NO_PLATFORM}` })),
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
  { files: ['tools/**', 'src/command/**', 'bench/**', 'tests/browser/**'], rules: { 'no-console': 'off' } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } },
  },
  ...rooms.map(arrows),
);
