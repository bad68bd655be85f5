import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import { gravest } from '$lib/solution/findings/harm.ts';
import type { Concern, View } from './view.ts';
import { isDimension } from './viewPrimitives.ts';

/** How grave what the checks say of the value at a pointer is; undefined where they ask for no change. */
export type LevelAt = (pointer: string) => Concern | undefined;

/** The view with its dimensions marked where the checks have something to say of their values. */
export function marked(view: View, checks: readonly Finding[], levelAt: LevelAt): View {
  return {
    ...view,
    items: view.items.map((item) => {
      if (!isDimension(item)) return item;
      const { input } = item;
      const about = item.kind === 'angle' ? item.about : undefined;
      const concern = (input === undefined ? undefined : levelAt(input)) ?? (about && levelOf(checks, about));
      return concern ? { ...item, concern } : item;
    }),
  };
}

function levelOf(checks: readonly Finding[], about: FindingCode): Concern | undefined {
  const level = gravest(checks.filter(({ code }) => code === about));
  return level === null || level === 'note' ? undefined : level;
}
