import * as v from 'valibot';
import type { TabNews } from './tabNews.ts';

/** What tabs tell each other about one project. */
const messageSchema = v.object({
  /**
   * `open`: I have opened it, who else has it? `here`: I have. `saved`: I have changed and saved it. `left`: I have it no
   * longer.
   */
  kind: v.picklist(['open', 'here', 'saved', 'left']),
  project: v.string(),
  tab: v.string(),
});

export type TabMessage = Readonly<v.InferOutput<typeof messageSchema>>;

/** What a tab knows of the others. */
export interface TabsKnown {
  /** This tab, and the project it has open. */
  readonly tab: string;
  readonly project: string;
  /** The other tabs that have it open. */
  readonly others: readonly string[];
  /** Another tab has saved a change that this one has not taken up. */
  readonly conflict: boolean;
}

export const newTabs = (tab: string, project: string): TabsKnown => ({ tab, project, others: [], conflict: false });

/** What is known after a message, and the kind of the answer to it, if any. Anything but a message changes nothing. */
export function heard(
  known: TabsKnown,
  message: unknown,
): { readonly known: TabsKnown; readonly reply: 'here' | null } {
  const parsed = v.safeParse(messageSchema, message);
  if (!parsed.success) return { known, reply: null };
  const { kind, project, tab } = parsed.output;
  if (tab === known.tab) return { known, reply: null };
  const rest = known.others.filter((other) => other !== tab);
  // A tab that speaks of another project has left this one, even where it did not say so.
  if (project !== known.project || kind === 'left') {
    return { known: rest.length === known.others.length ? known : { ...known, others: rest }, reply: null };
  }
  return {
    known: { ...known, others: [...rest, tab], conflict: known.conflict || kind === 'saved' },
    reply: kind === 'open' ? 'here' : null,
  };
}

export function newsOf({ others, conflict }: TabsKnown): TabNews {
  if (conflict) return { kind: 'conflict' };
  return others.length > 0 ? { kind: 'shared', tabs: others.length } : { kind: 'alone' };
}
