import { fittedText, line, type Primitive } from '$lib/drawing/primitive.ts';
import type { Point } from '$lib/geometry/point.ts';
import { lengthText, lengthWithUnit } from '$lib/project/lengthText.ts';
import { sideNames } from '$lib/project/project.ts';
import { MM_PER_INCH, type LengthDisplay } from '$lib/project/units.ts';
import { taskOf } from '$lib/proof/prove.ts';
import { sightSpots, type SightSpot } from '$lib/proof/sight.ts';
import type { Plan } from '$lib/solution/document.ts';
import { safeZoneOf, type SafeZone } from '$lib/solution/safeZone.ts';
import { MARGIN, papers, type PaperName } from './paper.ts';
import { SCALE_BAR, scaleBar } from './scaleBar.ts';
import { SIGHT_CARE } from './sightCare.ts';
import type { ViewSheet } from './viewSheet.ts';

const WIDE = 0.5;
const NARROW = 0.25;
const TEXT = 3.2;
const SMALL = 2.8;
const LARGE = 5;
/** From the top of the sheet to the middle of the target, and how much of the sheet's height is the target's, mm. */
const MIDDLE = 124;
const HALF = 82;

const RINGS = { mm: [10, 25, 50, 80], in: [0.5, 1, 2, 3] } as const;

/**
 * A card for the sight check at full size: rings round the head's middle, the safe zone, and the spots that a light or a string
 * along each face of the cabinets makes if the stands stand as planned. To be held plumb at the head, its print towards the
 * loudspeakers, from where the spots are looked at and nobody looks into a beam: what is right from the chair is at the left on it.
 */
export function sightCard(plan: Plan, paper: PaperName): ViewSheet {
  const { project, layout, head } = plan;
  const { display } = project;
  const { width, height } = papers[paper];
  const middle: Point = [width / 2, MIDDLE];
  const spots = sideNames.flatMap((side) => {
    const task = taskOf(project, layout, side);
    return task.ok ? sightSpots(task.value, side) : [];
  });
  const room = width - 2 * MARGIN;
  const said = (text: string, y: number, size = TEXT): Primitive =>
    fittedText({ kind: 'text', text, at: [MARGIN, y], anchor: 'start', size }, room);
  const lines = [
    ...spots.map((spot) => spotLine(spot, display)),
    ...SIGHT_CARE,
    'A pointer that is not true to its body: mark its spot, turn it half a circle in the same place, mark again; the middle counts.',
  ];
  const from = MIDDLE + HALF + 6;
  return {
    width,
    height,
    title: `Sight card: ${project.title}, ${layout.name}`,
    about: 'Scale 1:1. Print at 100 %.',
    groups: [
      {
        id: 'heading',
        primitives: [
          said(`Sight card: ${project.title}, ${layout.name}`, MARGIN + 6, LARGE),
          said(
            `Stand it plumb at the head, ${lengthWithUnit(-head.y, display)} before the desk’s front edge, its print facing the desk squarely.`,
            MARGIN + 13,
          ),
          said(
            `The cross is the middle between the ears: ${lengthWithUnit(head.z, display)} over the desk, ${sideways(head.x, display)}.`,
            MARGIN + 18.5,
          ),
          said(
            'Look at it from the side of the desk, never from the chair: the chair’s right is at your left.',
            MARGIN + 24,
          ),
        ],
      },
      { id: 'safe-zone', primitives: zonePrimitives(safeZoneOf(plan), middle, room / 2) },
      { id: 'rings', primitives: ringPrimitives(middle, display, room / 2) },
      { id: 'spots', primitives: spots.flatMap((spot) => spotPrimitives(spot, middle, room / 2)) },
      { id: 'notes', primitives: lines.map((text, index) => said(text, from + index * 4.6, SMALL)) },
      { id: 'scale-bar', primitives: scaleBar([MARGIN, height - MARGIN - SCALE_BAR.height], 1, display) },
    ],
  };
}

const sideways = (x: number, display: LengthDisplay): string =>
  Math.abs(x) < 0.05
    ? 'in line with the desk’s middle'
    : `${lengthWithUnit(Math.abs(x), display)} ${x > 0 ? 'right' : 'left'} of the desk’s middle`;

const FACE = { top: 'lying on top', baffle: 'square to the baffle at the aimed point' } as const;

function spotLine({ side, on, right, over, z }: SightSpot, display: LengthDisplay): string {
  const part = (mm: number, plus: string, minus: string): string =>
    `${lengthText(Math.abs(mm), display)} ${mm < 0 ? minus : plus}`;
  return `${side === 'left' ? 'Left' : 'Right'}, ${FACE[on]}: ${part(right, 'right', 'left')}, ${part(over, 'over', 'under')} the cross; ${lengthWithUnit(z, display)} over the desk.`;
}

/** A box round the cross that ends at the card's border. */
function zonePrimitives({ left, right, up, down }: SafeZone, [x, y]: Point, most: number): readonly Primitive[] {
  const [l, r] = [x - Math.min(right, most), x + Math.min(left, most)];
  const [t, b] = [y - Math.min(up, HALF), y + Math.min(down, HALF)];
  const dashes = [4, 1.5];
  return [
    { kind: 'line', points: [[l, t], [r, t], [r, b], [l, b]], closed: true, width: WIDE, dashes },
    { kind: 'text', text: 'safe zone', at: [l + 1.5, b - 1.5], anchor: 'start', size: SMALL },
  ]; // prettier-ignore
}

function ringPrimitives([x, y]: Point, { length }: LengthDisplay, most: number): readonly Primitive[] {
  const rings = RINGS[length].map((size) => ({ size, radius: length === 'in' ? size * MM_PER_INCH : size }));
  return [
    line([[x - most, y], [x + most, y]], NARROW),
    line([[x, y - HALF], [x, y + HALF]], NARROW),
    { kind: 'text', text: 'right from the chair', at: [x - most, y - 1.5], anchor: 'start', size: SMALL },
    { kind: 'text', text: 'left from the chair', at: [x + most, y - 1.5], anchor: 'end', size: SMALL },
    ...rings.flatMap(({ size, radius }): Primitive[] => [
      { kind: 'circle', centre: [x, y], radius, width: NARROW },
      { kind: 'text', text: String(size), at: [x - 0.72 * radius - 0.8, y - 0.72 * radius], anchor: 'end', size: SMALL },
    ]),
  ]; // prettier-ignore
}

const CROSS = 3;

/** A cross in a ring with the face's name; none where the card does not reach. */
function spotPrimitives({ side, on, right, over }: SightSpot, [x, y]: Point, most: number): readonly Primitive[] {
  if (Math.abs(right) > most - CROSS || Math.abs(over) > HALF - CROSS) return [];
  const [a, b] = [x - right, y - over];
  return [
    line([[a - CROSS, b], [a + CROSS, b]], WIDE),
    line([[a, b - CROSS], [a, b + CROSS]], WIDE),
    { kind: 'circle', centre: [a, b], radius: 0.7 * CROSS, width: NARROW },
    {
      kind: 'text',
      text: `${side} ${on}`,
      at: [side === 'left' ? a + CROSS + 1 : a - CROSS - 1, b + (on === 'top' ? -1.5 : 3.5)],
      anchor: side === 'left' ? 'start' : 'end',
      size: SMALL,
    },
  ]; // prettier-ignore
}
