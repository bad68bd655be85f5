import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * Which file of the built site a module goes into, for those that pages share: a page then comes in a few files, and in
 * little that it has no use for. `base` is Svelte and Kit, `frame` what the layout round every page needs, `pages` what the
 * first page shares with others. Null: as the bundler has it.
 *
 * What the first page shares with a part that is fetched late is in `frame` or `pages` too: Kit follows the late parts of
 * one file before it comes to the next one, and would list neither that part's other files nor their styles for the page.
 */

/** @typedef {{ readonly importedIds: readonly string[]; readonly dynamicallyImportedIds: readonly string[] }} Imports */
/** @typedef {{ getModuleInfo(id: string): Imports | null }} Graph */

const routes = join(root, 'src/routes');
const first = join(routes, '+page.svelte');
const others = readdirSync(routes, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('+page.svelte') && path !== '+page.svelte')
  .map((path) => join(routes, path));

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
  const elsewhere = [lateOf(frame), lateOf(own), ...others.map((page) => reached([page], atOnce))];
  const lateInFrame = lateOf(frame);
  return {
    frame: new Set([...frame, ...[...own].filter((id) => lateInFrame.has(id))]),
    pages: new Set([...own].filter((id) => elsewhere.some((modules) => modules.has(id)))),
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
    return shares.pages.has(id) ? 'pages' : null;
  };
}
