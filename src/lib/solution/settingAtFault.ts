import type { StandSettings } from '$lib/project/project.ts';

/** What a stand can be without, the likeliest to be at fault first. */
const details = ['recess', 'cable', 'relief', 'corner', 'pockets', 'stop', 'ribs', 'cheeks', 'rods'] as const;

/**
 * The setting of a stand that keeps something from working, found by leaving out one after the other: a pointer relative to
 * the layout, to the build itself where no single setting is at fault.
 */
export function settingAtFault(settings: StandSettings, works: (settings: StandSettings) => boolean): string {
  const without: readonly (readonly [string, Partial<StandSettings>])[] = [
    ...details.filter((name) => settings[name] !== null).map((name) => [name, { [name]: null }] as const),
    ...(settings.veneer > 0 ? [['veneer', { veneer: 0 }] as const] : []),
  ];
  const found = without.find(([, change]) => works({ ...settings, ...change }));
  return `/stand/${found?.[0] ?? 'build'}`;
}
