import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { root } from '../tools/root.mjs';

/** How a number was come by is for tests and comments; who reads the page or the paper gets a document’s name, or “rule of thumb”. */
const OURS = /from memory|no source|common practice|\bas quoted\b| \(quoted\)|, quoted\b|engineering guide/i;

/** Names that have given way to a trade word: one thing has one name wherever it is read. */
const RETIRED =
  /the geometry itself|Exact for the numbers|may be off by|misses (the )?head by|Axis over level|Push that tips|Standing safely|Wood round|Play (round|in) |Share filled|cannot be had\b(?=[<{'])|free box|Left later|Right louder|An empty desk|Put this away|Pass on|calliper|Toe-in/;

/** A source file without its comments: what is left may be read by a user. */
const spoken = (source: string): string =>
  source
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/<!--[\s\S]*?-->/g, '')
    .replace(/(^|[\s;,{(])\/\/.*$/gm, '$1');

const sources = readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.(ts|svelte|html)$/.test(path))
  .map((path) => ({ path, text: spoken(readFileSync(`${root}src/${path}`, 'utf8')) }));

describe('texts that users read', () => {
  test('name a document or say rule of thumb, never how a number was come by', () => {
    expect(sources.length).toBeGreaterThan(400);
    const told = sources.flatMap(({ path, text }) =>
      text.split('\n').flatMap((line) => (OURS.test(line) ? [`${path}: ${line.trim()}`] : [])),
    );
    expect(told).toEqual([]);
  });

  test('keep to the names that the page has for things', () => {
    const told = sources.flatMap(({ path, text }) =>
      text.split('\n').flatMap((line) => (RETIRED.test(line) ? [`${path}: ${line.trim()}`] : [])),
    );
    expect(told).toEqual([]);
    expect("title: 'Width may be off by',").toMatch(RETIRED);
  });

  test('are looked through with their comments left out', () => {
    expect(spoken("/** From memory. */\nconst a = 'b'; // common practice")).not.toMatch(OURS);
    expect(spoken("source: 'ISO 1, from memory', // so")).toMatch(OURS);
    expect(spoken('limits: `see https://example.org, no source`')).toMatch(OURS);
  });
});
