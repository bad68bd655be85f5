import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * Which file of the built site a module goes into, for those that pages share: a page then comes in a few files, and in
 * little that it has no use for. `base` is Svelte and Kit, `frame` what the layout round every page needs, `most` what the
 * first page shares with several others, `pages` what with any. Null: as the bundler has it.
 *
 * Kit follows the late parts of one file before it comes to the next one, and what it meets there first it does not list
 * for the page: neither scripts nor styles. So `frame` has no late parts, they and what leads to them stay with the layout
 * itself; and what the first page shares with a late part is in `pages`.
 */

/** @typedef {{ readonly importedIds: readonly string[]; readonly dynamicallyImportedIds: readonly string[] }} Imports */
/** @typedef {{ getModuleInfo(id: string): Imports | null }} Graph */

const routes = join(root, 'src/routes');
const first = join(routes, '+page.svelte');
const others = readdirSync(routes, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('+page.svelte') && path !== '+page.svelte')
  .map((path) => join(routes, path));

/** What so many pages have in common with the first one is a file of its own. */
const MOST = 3;

const BASE = /node_modules\/(?:svelte|@sveltejs|clsx|esm-env|devalue)\//;

/**
 * Everything that modules lead to, over any number of steps.
 * @param {Iterable<string>} from
 * @param {(id: string) => readonly string[]} next
 */
function reached(from, next) {
  const found = /** @type {Set<string>} */ (new Set());
  const waiting = [...from];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    waiting.push(...next(id));
  }
  return found;
}

/** @param {Graph} graph */
function sharesOf(graph) {
  const atOnce = (/** @type {string} */ id) => graph.getModuleInfo(id)?.importedIds ?? [];
  const late = (/** @type {string} */ id) => graph.getModuleInfo(id)?.dynamicallyImportedIds ?? [];
  const lateOf = (/** @type {Set<string>} */ modules) =>
    reached([...modules].flatMap(late), (id) => [...atOnce(id), ...late(id)]);
  const frame = reached([join(routes, '+layout.svelte')], atOnce);
  const own = reached([first], atOnce);
  const pages = others.map((page) => reached([page], atOnce));
  const elsewhere = [lateOf(frame), lateOf(own), ...pages];
  return {
    frame: new Set([...frame].filter((id) => [...reached([id], atOnce)].every((one) => late(one).length === 0))),
    most: new Set([...own].filter((id) => pages.filter((modules) => modules.has(id)).length >= MOST)),
    pages: new Set([...own].filter((id) => !frame.has(id) && elsewhere.some((modules) => modules.has(id)))),
  };
}

/**
 * For one build: the graph does not change while its modules are divided.
 * @returns {(id: string, graph: Graph) => string | null}
 */
export function chunkOf() {
  /** @type {ReturnType<typeof sharesOf> | null} */
  let shares = null;
  return (id, graph) => {
    if (BASE.test(id)) return 'base';
    shares ??= sharesOf(graph);
    if (shares.frame.has(id)) return 'frame';
    if (shares.most.has(id)) return 'most';
    return shares.pages.has(id) ? 'pages' : null;
  };
}
