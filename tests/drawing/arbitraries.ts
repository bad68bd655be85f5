import fc from 'fast-check';
import { sceneOrNull, type Scene } from './scene.ts';

const whole = (min: number, max: number) => fc.integer({ min, max });

/** Arrangements about the demo's, askew in every way; only those that have a plan. */
export const scenes: fc.Arbitrary<Scene> = fc
  .record({
    left: fc.record({ x: whole(-600, -300), y: whole(150, 400) }),
    right: fc.record({ x: whole(300, 600), y: whole(150, 400) }),
    offset: whole(-120, 120),
    earHeight: whole(1000, 1300),
    wallGap: fc.option(whole(0, 900)),
  })
  .map(sceneOrNull)
  .filter((made) => made !== null);
