import type { ViewName } from './sheet.ts';
import type { Item, Subject, View } from './view.ts';

/** What somebody picked on a sheet: a dimension, or a thing. */
export interface Choice {
  readonly view: ViewName;
  /** Of the item. */
  readonly id: string;
  readonly subject: Subject;
  /** JSON pointer of the project's value, for the dimension of an input. */
  readonly input?: string;
}

/** The choice that an item of a view stands for. Null when the view has no such item. */
export function choiceOf(view: ViewName, { items }: View, id: string): Choice | null {
  const item: Item | undefined = items.find((one) => one.id === id);
  if (!item) return null;
  const common = { view, id, subject: item.subject };
  return 'input' in item && item.input !== undefined ? { ...common, input: item.input } : common;
}
