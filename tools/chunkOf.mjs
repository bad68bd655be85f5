import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * Which file of the built site a module goes into, for those that pages share: a page then comes in a few files, and in
 * none that it has no use for. `base` is Svelte and Kit, `frame` what the layout round every page needs, `pages` what the
 * first page shares with others. Null: as the bundler has it.
 */

/** @typedef {{ getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null }} Graph */

const routes = join(root, 'src/routes');
const first = join(routes, '+page.svelte');
const others = readdirSync(routes, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('+page.svelte') && path !== '+page.svelte')
  .map((path) => join(routes, path));

const BASE = /node_modules\/(?:svelte|@sveltejs|clsx|esm-env|devalue)\//;

/**
 * Everything that a module imports at once, over any number of steps.
 * @param {Graph} graph
 * @param {string} from
 */
function neededBy(graph, from) {
  const needed = /** @type {Set<string>} */ (new Set());
  const waiting = [from];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (needed.has(id)) continue;
    needed.add(id);
    waiting.push(...(graph.getModuleInfo(id)?.importedIds ?? []));
  }
  return needed;
}

/**
 * For one build: the graph does not change while its modules are divided.
 * @returns {(id: string, graph: Graph) => string | null}
 */
export function chunkOf() {
  /** @type {{ frame: Set<string>; first: Set<string>; others: readonly Set<string>[] } | null} */
  let needed = null;
  return (id, graph) => {
    if (BASE.test(id)) return 'base';
    needed ??= {
      frame: neededBy(graph, join(routes, '+layout.svelte')),
      first: neededBy(graph, first),
      others: others.map((page) => neededBy(graph, page)),
    };
    if (needed.frame.has(id)) return 'frame';
    return needed.first.has(id) && needed.others.some((page) => page.has(id)) ? 'pages' : null;
  };
}
