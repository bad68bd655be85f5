import { countedValues, isEntered, type CountedKind } from './counted.ts';
import { pointerTo } from './fault.ts';
import { isMirrored } from './mirrored.ts';
import type { Project } from './project.ts';

/** What of a layout its user has measured, and what is still the example's or a default size. */
export interface Measured {
  /** Every counted value by its pointer: whether the user entered it. */
  readonly values: ReadonlyMap<string, boolean>;
  /** How many the user entered, and of how many. Marks that mirror each other count once. */
  readonly entered: number;
  readonly of: number;
}

/** A desk's top has the sizes of its own shape only. */
const isThere = (thing: Thing, key: string): boolean =>
  !key.startsWith('desk/outline/') ||
  key.split('/').reduce<unknown>((at, step) => (isHeld(at) ? at[step] : undefined), thing) !== undefined;

const isHeld = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

interface Thing {
  readonly entered?: readonly string[] | undefined;
}

/** The counted values of one layout: of its desk, seat, marks and screens, of the loudspeaker, and of the board that its stands are cut from. */
export function measuredOf(project: Project, layoutIndex: number): Measured {
  return { values: new Map(countedIn(project, layoutIndex)), ...tally(countedOnce(project, layoutIndex)) };
}

/** Pointers of the counted values of one layout that the user has not entered; of marks that mirror each other the right one’s. */
export const notEntered = (project: Project, layoutIndex: number): readonly string[] =>
  countedOnce(project, layoutIndex).flatMap(([pointer, entered]) => (entered ? [] : [pointer]));

function countedOnce(project: Project, layoutIndex: number): readonly Value[] {
  const layout = project.layouts[layoutIndex];
  const follows =
    layout && isMirrored(layout.placement) ? pointerTo('layouts', layoutIndex, 'placement', 'left') : null;
  return countedIn(project, layoutIndex).filter(([pointer]) => follows === null || !pointer.startsWith(follows));
}

/** How many of counted values were entered. */
function tally(values: readonly (readonly [string, boolean])[]): Pick<Measured, 'entered' | 'of'> {
  return { entered: values.filter(([, entered]) => entered).length, of: values.length };
}

/** The same for the values that belong to one group of the form, by the group's pointer. */
export function measuredIn(project: Project, layoutIndex: number, group: string): Pick<Measured, 'entered' | 'of'> {
  const { values } = measuredOf(project, layoutIndex);
  const placement = project.layouts[layoutIndex]?.placement;
  const once = placement && isMirrored(placement);
  return tally(
    [...values].filter(([pointer]) => groupOf(pointer) === group && !(once && pointer.includes('/placement/left/'))),
  );
}

const GROUP = /^(\/speaker\/(?:drivers|crossovers)|\/speaker|\/stock|\/layouts\/\d+\/[a-z]+)/;

/** The gap to the wall is asked for with the desk. */
const groupOf = (pointer: string): string | undefined =>
  GROUP.exec(pointer)?.[1]?.replace(/^(\/layouts\/\d+)\/room$/, '$1/desk');

type Value = readonly [pointer: string, entered: boolean];

function countedIn({ speaker, stock, layouts }: Project, layoutIndex: number): readonly Value[] {
  const layout = layouts[layoutIndex];
  if (layout === undefined) return [];
  const board = Math.max(
    0,
    stock.findIndex(({ name }) => name === layout.stand.stock),
  );
  const at = pointerTo('layouts', layoutIndex);
  return [
    ...within(at, 'layout', layout, layout.monitors.length > 0 ? 'monitors' : null),
    ...layout.monitors.flatMap((one, index) => within(`${at}/monitors/${index}`, 'monitor', one)),
    ...within('/speaker', 'speaker', speaker, speaker.crossovers.length > 0 ? 'crossovers' : null),
    ...speaker.drivers.flatMap((one, index) => within(`/speaker/drivers/${index}`, 'driver', one)),
    ...speaker.crossovers.flatMap((one, index) => within(`/speaker/crossovers/${index}`, 'crossover', one)),
    ...within(pointerTo('stock', board), 'stock', stock[board]),
  ];
}

/** @param full A list's own key, where the list has entries that are counted in its place. */
function within(at: string, kind: CountedKind, thing: Thing | undefined, full: string | null = null): readonly Value[] {
  const keys: readonly string[] = countedValues[kind];
  return thing === undefined
    ? []
    : keys
        .filter((key) => key !== full && isThere(thing, key))
        .map((key) => [`${at}/${key}`, isEntered(thing.entered, key)]);
}
