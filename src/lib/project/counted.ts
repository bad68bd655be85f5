/**
 * The values that somebody has to measure before the stands are their own, by the kind of thing they belong to and their
 * pointer within it. All else has a standard value, is a choice, or is worked out. Where there is no screen or no crossover,
 * that itself is an answer: the list's own key.
 */
/** Sizes of a desk's top: of each shape its own. */
const outlineSizes = [
  'desk/outline/width',
  'desk/outline/depth',
  'desk/outline/bow',
  'desk/outline/left',
  'desk/outline/right',
  'desk/outline/leftDepth',
  'desk/outline/rightDepth',
  'desk/outline/front',
  'desk/outline/return/width',
  'desk/outline/return/length',
  'desk/outline/points',
] as const;

export const countedValues = {
  speaker: ['width', 'height', 'depth', 'baffleRake', 'crossovers'],
  driver: ['diameter', 'height'],
  crossover: ['frequency'],
  stock: ['thickness', 'sheet/width', 'sheet/height'],
  monitor: ['x', 'y', 'width', 'height', 'bottom'],
  layout: [
    ...outlineSizes,
    'desk/height',
    'room/walls',
    'listener/earHeight',
    'listener/setback',
    'listener/offset',
    'placement/right/x',
    'placement/right/y',
    'placement/left/x',
    'placement/left/y',
    'monitors',
  ],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type CountedKind = keyof typeof countedValues;

/** Where each kind of thing stands; things within others first. */
const places: readonly (readonly [kind: CountedKind, at: RegExp])[] = [
  ['driver', /^\/speaker\/drivers\/\d+(?=\/)/],
  ['crossover', /^\/speaker\/crossovers\/\d+(?=\/)/],
  ['speaker', /^\/speaker(?=\/)/],
  ['stock', /^\/stock\/\d+(?=\/)/],
  ['monitor', /^\/layouts\/\d+\/monitors\/\d+(?=\/)/],
  ['layout', /^\/layouts\/\d+(?=\/)/],
];

/** A counted value: the pointer of the thing whose `entered` tells of it, and its key there. */
interface CountedPlace {
  readonly kind: CountedKind;
  readonly thing: string;
  readonly key: string;
}

/** Where the file tells whether the value at a pointer was entered; null for a value that is not counted. */
export function countedAt(pointer: string): CountedPlace | null {
  for (const [kind, at] of places) {
    const thing = at.exec(pointer)?.[0];
    if (thing === undefined) continue;
    // Walls are counted as one: whoever gives one of them has looked at them all.
    const key = pointer.slice(thing.length + 1).replace(/^(room\/walls|desk\/outline\/points)\/.*/, '$1');
    const keys: readonly string[] = countedValues[kind];
    return keys.includes(key) ? { kind, thing, key } : null;
  }
  return null;
}

/** Whether a thing's `entered` says that the user entered the value at its key. A thing without one is all the user's own. */
export const isEntered = (entered: unknown, key: string): boolean => !Array.isArray(entered) || entered.includes(key);
