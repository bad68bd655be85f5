import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { angleBetween, subtract } from '$lib/geometry/point.ts';
import { angleAtHead, triangleOf, type Triangle } from '$lib/layout/triangle.ts';
import { sideNames } from '$lib/project/project.ts';
import { trianglePlan } from '$lib/solution/trianglePlan.ts';
import { moved, type Aimed, type AimedSide, type Measure } from './measure.ts';

/** Angle at the head of a stereo triangle, degrees: ITU-R BS.775, 30° to each side. */
const STEREO = 60;

const triangle = ({ sides, heads }: Aimed): Triangle =>
  triangleOf(sides.left.aimedPoint, sides.right.aimedPoint, heads[0]);

const worst = ({ left, right }: Aimed['sides'], of: (side: AimedSide) => number): number =>
  Math.max(of(left), of(right));

/** Of the planned seat and where the axes point. */
export const aimMeasures: readonly Measure[] = [
  {
    name: 'triangle-error',
    label: 'Triangle error',
    unit: '°',
    better: 'less',
    says: 'How far the angle between the loudspeakers, seen from the head, is from the 60° of a stereo triangle.',
    working: '|angle at the head in plan − 60°|',
    needs: 'aim',
    of: ({ sides, heads }) =>
      Math.abs(degrees(angleAtHead(sides.left.aimedPoint, sides.right.aimedPoint, heads[0])) - STEREO),
  },
  {
    name: 'miss',
    label: 'Miss',
    unit: 'mm',
    better: 'less',
    says: 'How far the worse of the two axes passes from the middle of the head.',
    working: 'shortest distance from each axis to the head; the larger',
    needs: 'aim',
    of: ({ sides }) => worst(sides, ({ miss }) => miss),
  },
  {
    name: 'off-axis',
    label: 'Off axis',
    unit: '°',
    better: 'less',
    says: 'The largest angle between an axis and a head, over both loudspeakers and every posture.',
    working: 'angle at the aimed point between the axis and each head; the largest',
    needs: 'aim',
    of: ({ sides, heads }) => {
      let most = 0;
      for (const side of sideNames) {
        const { axis, aimedPoint } = sides[side];
        for (const head of heads) most = Math.max(most, angleBetween(axis, subtract(head, aimedPoint)));
      }
      return degrees(most);
    },
  },
  {
    name: 'tilt',
    label: 'Steepest tilt',
    unit: '°',
    better: 'less',
    says: 'How steeply the steeper of the two stands slopes, up or down.',
    working: '|tilt|; the larger',
    needs: 'aim',
    of: ({ sides }) => worst(sides, ({ tilt }) => Math.abs(tilt)),
  },
  {
    name: 'lift',
    label: 'Highest lift',
    unit: 'mm',
    better: 'less',
    says: 'How high over the desk the lowest edge of the higher cabinet is.',
    working: 'lift; the larger',
    needs: 'aim',
    of: ({ sides }) => worst(sides, ({ lift }) => lift),
  },
  {
    name: 'stand-height',
    label: 'Stand height',
    unit: 'mm',
    better: 'less',
    says: 'How high over the desk the highest edge under either cabinet is: lift and slope together.',
    working: 'height of the front and of the rear bottom edge of each cabinet over the desk; the largest',
    needs: 'aim',
    of: ({ sides }) => worst(sides, ({ frontEdgeHeight, rearEdgeHeight }) => Math.max(frontEdgeHeight, rearEdgeHeight)),
  },
  {
    name: 'toe-difference',
    label: 'Toe difference',
    unit: '°',
    better: 'less',
    says: 'How differently the two loudspeakers are turned in.',
    working: '|left toe − right toe|',
    needs: 'aim',
    of: ({ sides }) => Math.abs(sides.left.toe - sides.right.toe),
  },
  {
    name: 'time-difference',
    label: 'Arrival difference',
    unit: 'µs',
    better: 'less',
    says: 'How much earlier one loudspeaker is heard than the other.',
    working: '|left − right distance from the aimed point to the head| / speed of sound',
    limit: { value: HEAD_LIMITS.time.limit, source: HEAD_LIMITS.time.source },
    needs: 'aim',
    of: (aimed) => Math.abs(trianglePlan(triangle(aimed), aimed.speedOfSound).timeDifference),
  },
  {
    name: 'level-difference',
    label: 'Level difference',
    unit: 'dB',
    better: 'less',
    says: 'How much louder one loudspeaker is than the other, by distance alone.',
    working: '|20 · lg(left / right distance from the aimed point to the head)|',
    limit: { value: HEAD_LIMITS.level.limit, source: HEAD_LIMITS.level.source },
    needs: 'aim',
    of: (aimed) => Math.abs(trianglePlan(triangle(aimed), aimed.speedOfSound).levelDifference),
  },
  {
    name: 'move',
    label: 'Move',
    unit: 'mm',
    better: 'less',
    says: 'How far the two marks and the head are moved from where they are now, added up.',
    working: 'distance of each mark and of the head from its place in the layout that is changed; their sum',
    missing: { means: 'no layout is being changed', is: 'unknown' },
    needs: 'aim',
    of: ({ before, heads, sides }) => before && moved(before, heads[0], sides),
  },
];
