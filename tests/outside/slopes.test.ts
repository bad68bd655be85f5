import { describe, expect, it } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import type { SideName } from '$lib/project/project.ts';
import { buildStand } from '$lib/stand/build.ts';
import { faultLine } from '$lib/project/fault.ts';
import { plain } from '../stand/stands.ts';

interface Slopes {
  readonly alongX: number;
  readonly alongY: number;
}

/** How the top of a turned wedge climbs along the desk's axes: the plane through three corners as they stand on the desk. */
function slopesOf(side: SideName, toe: number, tilt: number): Slopes {
  const stance = { side, mark: vec3(side === 'right' ? 430 : -430, 300, 0), toe, tilt, lift: 12 };
  const stock = { name: 'board', thickness: 3, density: 750 };
  const outcome = buildStand(stance, { width: 165, depth: 205 }, plain, stock);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  const { footprint, frontHeight, rearHeight } = outcome.value;
  // Plumb ends: over each corner of the base stands a corner of the top.
  const [a = [0, 0], b = [0, 0], , d = [0, 0]] = footprint;
  const [p, q] = [
    [b[0] - a[0], b[1] - a[1], rearHeight - frontHeight] as const,
    [d[0] - a[0], d[1] - a[1], 0] as const,
  ];
  const normal = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]] as const;
  return { alongX: degrees(Math.atan(-normal[0] / normal[2])), alongY: degrees(Math.atan(-normal[1] / normal[2])) };
}

// Descriptive geometry of a wedge turned by ψ under a slope θ: tan θ · cos ψ and tan θ · sin ψ along the desk's axes.
// The angles were computed apart from this project.
describe('the apparent slopes of a turned wedge', () => {
  it.each([
    [30, 10, 8.6822, 5.0384],
    [25, 12, 10.904, 5.1331],
  ])('toed in by %d° with a tilt of %d°', (toe, tilt, alongDepth, alongWidth) => {
    const right = slopesOf('right', radians(toe), radians(tilt));
    const left = slopesOf('left', radians(toe), radians(tilt));
    // The front is high, so the top falls away from the listener, and outwards behind a front that is turned in.
    expect(right.alongY).toBeCloseTo(-alongDepth, 4);
    expect(left.alongY).toBeCloseTo(-alongDepth, 4);
    expect(right.alongX).toBeCloseTo(-alongWidth, 4);
    expect(left.alongX).toBeCloseTo(alongWidth, 4);
  });
});
