import { pointerTo } from '$lib/project/fault.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { asStood } from '$lib/project/stood.ts';
import { toe as toeFields } from '$lib/project/fields/aim.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import type { Layout, Project, SideName, TiltRule, ToeRule } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { RulePointer } from './freeRule.ts';
import type { AimRule } from './input.ts';

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
    mm('/listener/offset', 'Head, sideways', listener.offset, extent.left, extent.right),
    mm('/listener/earHeight', 'Ears over the floor', listener.earHeight, desk.height, Infinity),
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

/** A rule of toe or tilt that a search may set to any of several, as an ask has it. */
export interface RuleChoice {
  readonly pointer: RulePointer;
  readonly values: readonly AimRule[];
}

/** Every rule that a layout may be aimed by, its own as it is; each with what its own number begins with. */
export function freeRules({ layout, sides }: Pick<Plan, 'layout' | 'sides'>): readonly RuleChoice[] {
  const { toe, tilt } = layout.aim;
  const like = <Of extends AimRule>(now: Of, all: readonly Of[]): Of[] => all.map((one) => (one.rule === now.rule ? now : one)); // prettier-ignore
  const tenth = (degrees: number): number => Math.round(degrees * 10) / 10 || 0;
  const tilted = tenth(sides.right.tilt);
  const tilts: readonly TiltRule[] = [
    { rule: 'tilt-to-ear' },
    { rule: 'lift-to-ear', degrees: tilted },
    { rule: 'as-set', degrees: tilted },
  ];
  const hasLift = layout.stand.lift !== undefined;
  return [
    {
      pointer: '/aim/toe',
      values: like<ToeRule>(toe, [
        { rule: 'to-head' },
        { rule: 'to-ear' },
        { rule: 'behind-head', ...startOf({ distance: toeFields.distance }) },
        { rule: 'straight' },
        { rule: 'as-set', degrees: tenth(sides.right.toe) },
      ]),
    },
    { pointer: '/aim/tilt', values: like(tilt, tilts).filter(({ rule }) => hasLift || rule === 'lift-to-ear') },
  ];
}

/** Whether no mark of an ask moves without the other one. */
export const movesAsPair = (free: readonly { readonly pointer: string; readonly mirror?: boolean }[]): boolean =>
  free.every(({ pointer, mirror }) => mirror === true || !pointer.startsWith('/placement/'));

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
  const level = STEPS.mm.findIndex(
    (_, i) => spansAt(inputs, i).reduce((all, span) => all * spanCount(span), 1) <= most,
  );
  return spansAt(inputs, level < 0 ? STEPS.mm.length - 1 : level);
}

const spansAt = (inputs: readonly FreeInput[], level: number): Span[] =>
  inputs.map(({ pointer, mirror, unit, now, from, to }) => {
    const step = STEPS[unit][Math.min(level, STEPS[unit].length - 1)] ?? 1;
    const [down, up] = [Math.floor((now - from) / step), Math.floor((to - now) / step)];
    return { pointer, from: now - down * step, to: now + up * step, step, mirror };
  });

/** How many values a range has; a hair too few by rounding still count. */
export const spanCount = ({ from, to, step }: Pick<Span, 'from' | 'to' | 'step'>): number =>
  Math.floor((to - from) / step + DUST) + 1;

/** A whole number of steps that rounding makes a hair too short still counts. */
const DUST = 1e-9;
