import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { speedOfSound } from '$lib/acoustics/air.ts';
import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { meetingOf, relativeDifference } from '$lib/acoustics/driversMeet.ts';
import { lineUp } from '$lib/acoustics/lineUp.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const SPEED = speedOfSound(20);
const nearer = { '/speaker/designPoint': { driver: 'woofer', distance: 400 } };
const designed = { '/speaker/designPoint': { driver: 'tweeter', distance: 1000 } };

function found(of: Project, layout: Layout) {
  const pose = placeSide(of.speaker, layout, 'right');
  const [crossover] = of.speaker.crossovers;
  const designPoint = designPointOf(of.speaker);
  if (!pose.ok || !crossover || !designPoint) return null;
  const head = headOf(layout.listener, layout.desk);
  return lineUp({ speaker: of.speaker, layout, side: 'right' }, crossover, designPoint, pose.value, head, SPEED);
}

/** How far apart the drivers are at the head of a project, re its design point, mm. */
function apart(of: Project): number {
  const layout = firstLayout(of);
  const pose = placeSide(of.speaker, layout, 'right');
  const [crossover] = of.speaker.crossovers;
  const designPoint = designPointOf(of.speaker);
  if (!pose.ok || !crossover || !designPoint) throw new Error('expected a pose, a crossover and a design point');
  const meeting = meetingOf(crossover, pose.value.drivers, designPoint, SPEED);
  return relativeDifference(meeting, headOf(layout.listener, layout.desk));
}

test('a project set to what it says has its drivers in step, at the price it says', () => {
  let [tilts, points] = [0, 0];
  fc.assert(
    fc.property(anyDesk, fc.constantFrom(nearer, designed), (changes, design) => {
      const of = project({ ...changes, ...design });
      const layout = firstLayout(of);
      const pose = placeSide(of.speaker, layout, 'right');
      const answer = found(of, layout);
      if (!answer || !pose.ok) return;
      if (answer.tilt) {
        tilts++;
        const tilt = { rule: 'as-set', degrees: degrees(answer.tilt.value) };
        expect(Math.abs(apart(project({ ...changes, ...design, '/layouts/0/aim/tilt': tilt })))).toBeLessThan(1e-4);
      }
      if (answer.aimedPoint) {
        points++;
        const through = { between: ['woofer', 'tweeter'], fraction: answer.aimedPoint.value };
        const moved = project({ ...changes, ...design, '/layouts/0/aim/through': through });
        expect(Math.abs(apart(moved))).toBeLessThan(1e-4);
        const there = placeSide(moved.speaker, firstLayout(moved), 'right');
        const tweeter = there.ok ? there.value.drivers[0] : undefined;
        expect(answer.aimedPoint.price.offAxis).toBeCloseTo(tweeter?.offAxis ?? NaN, 12);
      }
    }),
    { numRuns: runs(200) },
  );
  expect(tilts).toBeGreaterThan(runs(200) / 4);
  expect(points).toBeGreaterThan(runs(200) / 10);
});

describe('on the demo desk', () => {
  test('the price is what the tweeter loses at 10 kHz, now none as the axis meets the head', () => {
    const of = project(designed);
    const answer = found(of, firstLayout(of));
    expect(answer?.now.driver).toBe('tweeter');
    expect(answer?.now.level).toBeCloseTo(0, 9);
    expect(answer?.tilt?.price.offAxis).toBeGreaterThan(0);
    expect(answer?.tilt?.price.level).toBeLessThan(0);
  });

  test('a set tilt leaves nothing for the aimed point to do', () => {
    const of = project({ ...designed, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 5 } });
    expect(found(of, firstLayout(of))?.aimedPoint).toBeNull();
  });

  test('drivers side by side with their depths alike are in step at no other tilt', () => {
    const of = project({
      '/speaker/drivers/0/height': 150,
      '/speaker/drivers/1/height': 150,
      '/speaker/drivers/0/offset': 60,
      '/speaker/drivers/1/offset': -30,
      '/speaker/drivers/1/acousticDepth': 0,
      // So near one of them, 90 mm beside the other, the paths are 53 mm apart: far from the loudspeaker they never are.
      '/speaker/designPoint': { driver: 'tweeter', distance: 50 },
    });
    expect(found(of, firstLayout(of))).toMatchObject({ tilt: null, aimedPoint: null });
  });
});
