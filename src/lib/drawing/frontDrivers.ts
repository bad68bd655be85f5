import type { Point } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { Speaker } from '$lib/project/project.ts';
import { liesOn, type Segment } from './coincide.ts';
import { squareToBaffle } from './squareToBaffle.ts';
import type { Item } from './view.ts';

/** A driver on the front view: where, and how large. Its place in the list is its index in the project. */
export interface FrontDriver {
  readonly name: string;
  readonly centre: Point;
  readonly radius: number;
}

export function frontDrivers(speaker: Speaker, side: SidePlan): FrontDriver[] {
  const { flat } = squareToBaffle(side);
  return side.drivers.map(({ name, position }, index) => ({
    name,
    centre: flat(position),
    radius: (speaker.drivers[index]?.diameter ?? 0) / 2,
  }));
}

/** How far a centre line is drawn past what it is the middle of, mm. */
export const CENTRE_BEYOND = 6;

/** Rims, and a cross of centre lines on each; lines that fall on the cabinet's own middle line are not drawn again. */
export function frontDriverItems(drivers: readonly FrontDriver[], middle: Segment): Item[] {
  return [...drivers.map(rim), ...drivers.flatMap((driver, index) => centreLines(driver, index, middle))];
}

const rim = ({ centre, radius }: FrontDriver, index: number): Item => ({
  kind: 'round',
  id: `driver-${index}`,
  subject: 'driver',
  pen: 'wide',
  centre,
  radius,
  filled: true,
});

function centreLines({ centre: [x, y], radius }: FrontDriver, index: number, middle: Segment): Item[] {
  const reach = radius + CENTRE_BEYOND;
  const lines: Record<string, Segment> = {
    level: [
      [x - reach, y],
      [x + reach, y],
    ],
    upright: [
      [x, y - reach],
      [x, y + reach],
    ],
  };
  return Object.entries(lines)
    .filter(([, line]) => !liesOn(line, [middle]))
    .map(([way, points]) => ({
      kind: 'outline',
      id: `driver-${index}-centre-${way}`,
      subject: 'driver',
      pen: 'centre',
      points,
      closed: false,
      filled: false,
    }));
}
