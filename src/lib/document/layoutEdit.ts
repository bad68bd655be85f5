import { failure, success, type Result } from '$lib/project/fault.ts';
import { listAt, withValue } from './pointer.ts';

type Named = Readonly<Record<string, unknown>> & { readonly name: string };

/** What is done to a list of layouts: one of the operations of the project room, with its index or name given. */
export type LayoutOperation = (layouts: readonly Named[]) => Result<readonly Named[]>;

const isNamed = (value: unknown): value is Named =>
  typeof value === 'object' && value !== null && 'name' in value && typeof value.name === 'string';

/** The draft with its layouts rearranged, sound or not, or why it cannot be. */
export function withLayouts(draft: unknown, operation: LayoutOperation): Result<unknown> {
  const layouts = listAt(draft, '/layouts');
  if (!layouts.every(isNamed)) return failure({ pointer: '/layouts', message: 'expected layouts that have names' });
  const changed = operation(layouts);
  return changed.ok ? success(withValue(draft, '/layouts', changed.value)) : changed;
}
