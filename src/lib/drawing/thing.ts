import { pointerTo } from '$lib/project/fault.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Item } from './view.ts';

/**
 * Something that a person can point at, called alike on every view and in the form: `desk`, `head`, `stand`, `axis`, `speaker`
 * (both, what they share) and `speaker-right`, `driver-0`, `monitor-1`, `surface-0`, `wall-0`.
 */
export type Thing = string;

/** What is chosen: one number of the project, by its pointer, or a thing. */
export type Chosen =
  { readonly kind: 'value'; readonly pointer: string } | { readonly kind: 'thing'; readonly thing: Thing };

/** The things that an item is a picture of, the nearest first. `side`: whose, where the view shows one loudspeaker only. */
export function thingsOf({ id, subject }: Item, side: SideName | null = null): readonly Thing[] {
  const whose = /-(left|right)(?:-|$)/.exec(id)?.[1] ?? side;
  const number = /^(?:driver|monitor|surface|wall)-(?:\D+-)?(\d+)/.exec(id)?.[1];
  const own = whose === null ? [] : [`speaker-${whose}`];
  switch (subject) {
    case 'desk':
    case 'head':
    case 'axis':
    case 'stand':
      return [subject];
    case 'monitor':
    case 'surface':
    case 'wall':
      return number === undefined ? [] : [`${subject}-${number}`];
    case 'cabinet':
      return [...own, 'speaker'];
    case 'driver':
      return [...(number === undefined ? [] : [`driver-${number}`]), ...own, 'speaker'];
    default:
      return [];
  }
}

/** Where in the project things are described: pattern of the pointer, and the thing. The first that matches counts. */
const places: readonly (readonly [pattern: RegExp, thing: string])[] = [
  [/^\/speaker\/drivers\/(\d+)/, 'driver-$1'],
  [/^\/speaker(\/|$)/, 'speaker'],
  [/^\/layouts\/\d+\/room\/walls\/(\d+)/, 'wall-$1'],
  [/^\/layouts\/\d+\/desk(\/|$)/, 'desk'],
  [/^\/layouts\/\d+\/monitors\/(\d+)/, 'monitor-$1'],
  [/^\/layouts\/\d+\/surfaces\/(\d+)/, 'surface-$1'],
  [/^\/layouts\/\d+\/listener(\/|$)/, 'head'],
  [/^\/layouts\/\d+\/placement\/(left|right)/, 'speaker-$1'],
  [/^\/layouts\/\d+\/placement$/, 'speaker'],
  [/^\/layouts\/\d+\/aim(\/|$)/, 'axis'],
  [/^\/layouts\/\d+\/stand(\/|$)/, 'stand'],
];

/** The thing that the value or group at a pointer describes; null where it describes none that is drawn. */
export function thingAt(pointer: string): Thing | null {
  for (const [pattern, thing] of places) {
    const found = pattern.exec(pointer);
    if (found) return thing.replace('$1', found[1] ?? '');
  }
  return null;
}

/** Pointer of the part of the project that describes a thing; null where none does. */
export function groupOf(thing: Thing, layoutIndex: number): string | null {
  const [kind, which] = thing.split('-');
  const inLayout = (...steps: string[]): string => pointerTo('layouts', layoutIndex, ...steps);
  switch (kind) {
    case 'desk':
      return inLayout('desk');
    case 'wall':
      return inLayout('room', 'walls', which ?? '0');
    case 'head':
      return inLayout('listener');
    case 'axis':
      return inLayout('aim');
    case 'stand':
      return inLayout('stand');
    case 'monitor':
      return inLayout('monitors', which ?? '0');
    case 'surface':
      return inLayout('surfaces', which ?? '0');
    case 'speaker':
      return which === undefined ? '/speaker' : inLayout('placement');
    case 'driver':
      return pointerTo('speaker', 'drivers', which ?? '0');
    default:
      return null;
  }
}

/** Whether an item is lit up by what is chosen: the dimension itself, the thing it belongs to, and every picture of it. */
export function isLit(item: Item, chosen: Chosen | null, side: SideName | null = null): boolean {
  if (chosen === null) return false;
  const input = 'input' in item ? item.input : undefined;
  const isDimension = item.kind === 'dimension' || item.kind === 'angle';
  if (isDimension && chosen.kind === 'value') return input === chosen.pointer;
  const thing = chosen.kind === 'value' ? thingAt(chosen.pointer) : chosen.thing;
  if (thing === null) return false;
  return isDimension ? input !== undefined && thingAt(input) === thing : thingsOf(item, side).includes(thing);
}
