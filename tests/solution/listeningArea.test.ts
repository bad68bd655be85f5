import { expect, test } from 'vitest';
import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../projects.ts';

const of = project();
const layout = firstLayout(of);
const planned = solve(of, layout);
if (!planned.ok) throw new Error('the demo can be planned');
const room = toTheEnd(listeningAreaSteps(of, layout, planned.value));

test('the demo’s seats are the planned head and its posture, in the desk frame', () => {
  expect(room.layout).toBe('window side');
  expect(room.limits).toBe(HEAD_LIMITS);
  expect(room.seats.map(({ posture, head }) => [posture, head])).toEqual([
    [null, planned.value.head],
    ['leaning in', { x: 0, y: -60, z: 1150 - 735 }],
  ]);
});

test('sideways the demo’s head may move as far as the time between the sides allows, by the plan’s own figures', () => {
  const { reach, out } = room.seats[0] ?? {};
  expect(out).toBeNull();
  expect(reach?.right.by).toBe('time');
  // A head that has moved, with loudspeakers that have not: distances from the planned aimed points.
  const { left, right } = planned.value.sides;
  const path = ({ x, y, z }: { x: number; y: number; z: number }, away: number): number =>
    Math.hypot(x - away, y - planned.value.head.y, z - planned.value.head.z);
  const away = reach?.right.distance ?? NaN;
  const time = ((path(left.aimedPoint, away) - path(right.aimedPoint, away)) / planned.value.speedOfSound) * 1000;
  expect(time).toBeLessThanOrEqual(HEAD_LIMITS.time.limit);
  // A tenth of a millimetre is 0.4 µs here.
  expect(time).toBeGreaterThan(HEAD_LIMITS.time.limit - 0.5);
});

test('the box is no larger than any seat’s, and can be sent to a page as it is', () => {
  for (const { reach } of room.seats) {
    expect(room.box.left.distance).toBeLessThanOrEqual(reach.left.distance);
    expect(room.box.up.distance).toBeLessThanOrEqual(reach.up.distance);
  }
  expect(structuredClone(room)).toEqual(room);
});
