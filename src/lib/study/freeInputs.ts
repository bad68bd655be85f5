import { pointerTo } from '$lib/project/fault.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';

/** A number that a search may change, with bounds that make sense on this desk. */
export interface FreeInput {
  readonly pointer: string;
  /** Whether the other loudspeaker goes to the mirror image. */
  readonly mirror: boolean;
  readonly label: string;
  readonly unit: 'mm' | '°';
  readonly now: number;
  readonly from: number;
  readonly to: number;
}

/** How far from where it is now something is moved, unless the desk ends before, mm: an arm's reach of rearranging. */
const REACH = 150;
/** How far the seat goes from the desk's edge, mm. */
const SEAT = { from: 0, to: 900 };
/** How high stands are raised, mm. */
const HIGHEST = 200;

/**
 * Everything that a search may change in a layout, the likeliest first.
 *
 * @param asPair Whether the marks move as mirror images of each other; else each by itself.
 */
export function freeInputs(project: Pick<Project, 'speaker'>, layout: Layout, asPair = true): readonly FreeInput[] {
  const { desk, placement, listener, stand, aim, monitors } = layout;
  const speaker = asStood(project.speaker);
  const half = speaker.width / 2;
  const { extent, depth } = deskShape(desk);
  const mm = (pointer: string, label: string, now: number, least: number, most: number, mirror = false): FreeInput => ({
    pointer,
    mirror,
    label,
    unit: 'mm',
    now,
    ...within(now, least, most),
  });
  const degrees = (pointer: string, label: string, now: number): FreeInput => ({ pointer, mirror: false, label, unit: '°', now, from: now - 15, to: now + 15 }); // prettier-ignore
  const marks = (side: SideName, label: string): FreeInput[] => {
    const { x, y } = placement[side];
    const [least, most] = side === 'left' ? [extent.left + half, -half] : [half, extent.right - half];
    return [
      mm(pointerTo('placement', side, 'x'), `${label}, sideways`, x, least, most, asPair),
      mm(
        pointerTo('placement', side, 'y'),
        `${label}, from the edge`,
        y,
        extent.bottom,
        extent.top - speaker.depth,
        asPair,
      ),
    ];
  };
  return [
    ...(asPair ? marks('right', 'Marks') : [...marks('left', 'Left mark'), ...marks('right', 'Right mark')]),
    mm('/listener/setback', 'Head from the edge', listener.setback, SEAT.from, SEAT.to),
    ...(aim.tilt.rule === 'lift-to-ear' || stand.lift === undefined
      ? []
      : [mm('/stand/lift', 'Lift', stand.lift, 0, Math.max(HIGHEST, stand.lift))]),
    ...(aim.toe.rule === 'as-set' ? [degrees('/aim/toe/degrees', 'Toe', aim.toe.degrees)] : []),
    ...(aim.toe.rule === 'behind-head'
      ? [mm('/aim/toe/distance', 'Axes meet behind the head', aim.toe.distance, 0, Infinity)]
      : []),
    ...(aim.tilt.rule === 'tilt-to-ear' ? [] : [degrees('/aim/tilt/degrees', 'Tilt', aim.tilt.degrees)]),
    ...monitors.flatMap((monitor, index) => {
      const name = monitors.length > 1 ? `Screen ${index + 1}` : 'Screen';
      const at = (key: string): string => pointerTo('monitors', index, key);
      return [
        mm(at('x'), `${name}, sideways`, monitor.x, extent.left, extent.right),
        mm(at('y'), `${name}, from the edge`, monitor.y, 0, depth),
        mm(at('bottom'), `${name}, over the desk`, monitor.bottom, 0, Infinity),
      ];
    }),
  ];
}

/** Whether no mark of an ask moves without the other one. */
export const movesAsPair = (free: readonly Pick<Span, 'pointer' | 'mirror'>[]): boolean =>
  free.every(({ pointer, mirror }) => mirror || !pointer.startsWith('/placement/'));

/** `REACH` round what it is now, held to where it makes sense; what it is now always lies in it. */
const within = (now: number, least: number, most: number): { readonly from: number; readonly to: number } => ({
  from: Math.min(now, Math.max(least, now - REACH)),
  to: Math.max(now, Math.min(most, now + REACH)),
});

/** Steps that people would set. */
const STEPS = { mm: [1, 2, 5, 10, 20, 25, 30, 40, 50, 75, 150], '°': [0.1, 0.2, 0.5, 1, 2, 5, 7.5] } as const;

/** A range as an ask has it. */
export interface Span {
  readonly pointer: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly mirror: boolean;
}

/** The inputs with the finest steps that make no more candidates than `most`; what is now is one of the values of each. */
export function spansOf(inputs: readonly FreeInput[], most: number): readonly Span[] {
  const level = STEPS.mm.findIndex((_, i) => spansAt(inputs, i).reduce((all, span) => all * countOf(span), 1) <= most);
  return spansAt(inputs, level < 0 ? STEPS.mm.length - 1 : level);
}

const spansAt = (inputs: readonly FreeInput[], level: number): Span[] =>
  inputs.map(({ pointer, mirror, unit, now, from, to }) => {
    const step = STEPS[unit][Math.min(level, STEPS[unit].length - 1)] ?? 1;
    const [down, up] = [Math.floor((now - from) / step), Math.floor((to - now) / step)];
    return { pointer, from: now - down * step, to: now + up * step, step, mirror };
  });

const countOf = ({ from, to, step }: Span): number => Math.round((to - from) / step) + 1;
