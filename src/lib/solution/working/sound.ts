import { filterLag } from '$lib/acoustics/alignment.ts';
import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { meetingOf } from '$lib/acoustics/driversMeet.ts';
import { lowerAndUpper } from '$lib/acoustics/pair.ts';
import { forwardSine, pistonLevel, pistonRadius, pistonSize } from '$lib/acoustics/piston.ts';
import { ESTIMATE_RULE } from '$lib/acoustics/radiating.ts';
import { PRICE_FREQUENCY } from '$lib/acoustics/lineUp.ts';
import type { Plane } from '$lib/acoustics/bounce.ts';
import { surfacesAround } from '$lib/acoustics/surface.ts';
import { driversOn } from '$lib/layout/place.ts';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { cross, dot, length, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { says } from '$lib/project/sentence.ts';
import { asStood } from '$lib/project/stood.ts';
import type { CrossoverPlan, ReflectionPlan } from '$lib/solution/document.ts';
import { sameSurface, surfaceReflections } from '$lib/solution/leadingReflections.ts';
import { placedDrivers } from '$lib/solution/placedDrivers.ts';
import type { Formula } from './formula.ts';
import { apart, aside, c, driverOf, elevation, frontEdge, quantity, sideOf } from './quantities.ts';
import { call, minus, over, plus, root, size, square, times, type Subject } from './term.ts';

const speed = quantity('c', 'speed of sound', 'm/s', ({ plan }) => plan.speedOfSound);
const temperature = quantity('T', 'temperature of the air', '°C', ({ layout }) => layout.air.temperature);

const air: Formula = {
  id: 'speed',
  topic: 'Air',
  title: 'Speed of sound',
  result: speed,
  term: times(343.2, root(over(plus(temperature, 273.15), 293.15))),
  source: 'the form of ISO 9613-1',
  limits: 'Dry air; humidity adds less than half a per cent at 20 °C.',
  figure: null,
};

const toHead = apart(
  (s) => driverOf(s).acousticCentre,
  ({ plan }) => plan.head,
  'from the head to the acoustic centre',
);
const distance = quantity('d', 'acoustic centre to the head', 'mm', (s) => driverOf(s).distance);
const offAxis = quantity('δ', 'between the driver’s axis and the head', '°', (s) => driverOf(s).offAxis);
const asideOf = (s: Subject) => aside(driverOf(s).position, sideOf(s).axis, s.plan.head);
const across = quantity('s', 'head from the driver’s axis', 'mm', (s) => asideOf(s).across);
const ahead = quantity('t', 'head along the driver’s axis', 'mm', (s) => asideOf(s).ahead);
const overDesk = quantity('z', 'driver over the desk', 'mm', (s) => driverOf(s).position.z);
const height = quantity(
  'h_i',
  'driver, up the baffle',
  'mm',
  ({ project, side, index }) => driversOn(asStood(project.speaker), side)[index]?.height ?? NaN,
);
const radius = quantity('R', 'half the driver’s radiating diameter', 'mm', ({ project, index }) => {
  const driver = project.speaker.drivers[index];
  return driver ? pistonRadius(driver) : NaN;
});
const treble = quantity('f', 'frequency', 'Hz', () => PRICE_FREQUENCY);
const beam = quantity(
  'x',
  'size of the piston against the wave, towards the head',
  '',
  (s) => pistonSize(radius.of(s), PRICE_FREQUENCY, s.plan.speedOfSound) * forwardSine(radians(driverOf(s).offAxis)),
);
const loss = quantity('L', 'level at the head re on the axis', 'dB', (s) =>
  pistonLevel(pistonSize(radius.of(s), PRICE_FREQUENCY, s.plan.speedOfSound), radians(driverOf(s).offAxis)),
);

const drivers: readonly Formula[] = [
  {
    id: 'driver-distance',
    topic: 'Drivers',
    title: 'Driver to the head',
    result: distance,
    term: root(plus(square(toHead.x), square(toHead.y), square(toHead.z))),
    limits: 'From the acoustic centre, as deep behind the baffle as measured.',
    figure: 'driver',
  },
  {
    id: 'off-axis',
    topic: 'Drivers',
    title: 'Head off the driver’s axis',
    result: offAxis,
    term: call('atan2', across, ahead),
    figure: 'driver',
  },
  {
    id: 'driver-height',
    topic: 'Drivers',
    title: 'Driver over the desk',
    result: overDesk,
    term: plus(frontEdge, times(height, call('cos', elevation))),
    figure: 'side',
  },
  {
    id: 'piston-size',
    topic: 'Drivers',
    title: 'Piston against the wave',
    result: beam,
    term: over(times(2, Math.PI, treble, radius, call('sin', offAxis)), times(1000, c)),
    source: 'ka · sin δ of a circular piston (Beranek and Mellow)',
    limits: says`Of the dome or cone, not of the rim. Where nobody stated it, it is an estimate: ${ESTIMATE_RULE}.`,
    figure: 'piston',
  },
  {
    id: 'piston',
    topic: 'Drivers',
    title: 'Treble lost off the axis, at 10 kHz',
    result: loss,
    term: times(20, call('lg', size(call('D', beam)))),
    source: 'circular flat piston in an endless baffle, D(x) = 2·J₁(x)/x (Beranek and Mellow)',
    limits: 'An upper bound: a dome or cone beams less than a flat piston. In front of the baffle only.',
    figure: 'piston',
  },
];

const crossoverOf = (s: Subject): CrossoverPlan => {
  const crossover = sideOf(s).crossovers[s.index];
  if (!crossover) throw new Error(`no crossover has the place ${s.index}`);
  return crossover;
};
const pairOf = (s: Subject) => {
  const crossover = s.project.speaker.crossovers[s.index];
  if (!crossover) throw new Error(`no crossover has the place ${s.index}`);
  const drivers = placedDrivers(asStood(s.project.speaker), sideOf(s));
  const [lower, upper] = lowerAndUpper(crossover, drivers);
  return { crossover, drivers, lower, upper };
};
const lowerPath = quantity('d_l', 'lower driver to the head', 'mm', (s) => pairOf(s).lower.distance);
const upperPath = quantity('d_u', 'upper driver to the head', 'mm', (s) => pairOf(s).upper.distance);
const path = quantity(
  'Δ',
  'path of the lower driver less that of the upper',
  'mm',
  (s) => crossoverOf(s).pathDifference,
);
const frequency = quantity('f', 'crossover frequency', 'Hz', (s) => crossoverOf(s).frequency);
const designPath = quantity('Δ_0', 'the same at the design point', 'mm', (s) => {
  const point = designPointOf(s.project.speaker);
  const { crossover, drivers } = pairOf(s);
  return point ? meetingOf(crossover, drivers, point, s.plan.speedOfSound).design : NaN;
});
const phase = quantity('ψ', 'how far the path makes the lower driver lag', '°', (s) => crossoverOf(s).phase);
const filter = quantity('ε', 'how far the filter makes the lower driver lag', '°', (s) => {
  const { crossover, lower, upper } = pairOf(s);
  return degrees(filterLag(crossover, lower.driver, upper.driver));
});
const sum = quantity('S', 'sum re the two drivers lined up', 'dB', (s) => crossoverOf(s).sumLevel ?? -Infinity);

const crossovers: readonly Formula[] = [
  {
    id: 'path',
    topic: 'Crossovers',
    title: 'Path difference, lower − upper',
    result: path,
    term: minus(lowerPath, upperPath),
    limits:
      'Between acoustic centres. Geometry alone: what it does to the sum depends on where the maker lined the drivers up.',
    figure: 'crossover',
  },
  {
    id: 'phase',
    topic: 'Crossovers',
    title: 'Phase',
    result: phase,
    term: over(times(360, frequency, path), times(1000, c)),
    source: 'a wave of length c/f turns once along its length',
    limits: 'At the crossover frequency; over a turn it is not wrapped.',
    figure: 'crossover',
  },
  {
    id: 'sum',
    topic: 'Crossovers',
    title: 'Sum at the crossover',
    result: sum,
    term: times(
      20,
      call(
        'lg',
        over(
          size(
            call('cos', over(plus(over(times(360, frequency, minus(path, designPath)), times(1000, c)), filter), 2)),
          ),
          call('cos', over(filter, 2)),
        ),
      ),
    ),
    source:
      'two equally strong waves; S. H. Linkwitz, Active Crossover Networks for Noncoincident Drivers, JAES 24(1), 1976',
    known: (s) => crossoverOf(s).sumKnown,
    limits:
      'Known only with a design point. Both branches equally strong; 0° of filter in phase, 90° either way in quadrature.',
    figure: 'crossover',
  },
];

const reflectionIn = (s: Subject): ReflectionPlan | null => surfaceReflections(s.plan)[s.index]?.[s.side] ?? null;
const reflectionOf = (s: Subject): ReflectionPlan => {
  const reflection = reflectionIn(s);
  if (!reflection) throw new Error(`no reflection has the place ${s.index}`);
  return reflection;
};
/** The acoustic centre of the driver that a reflection is of. */
const sourceOf = (s: Subject): Vec3 => {
  const { driver } = reflectionOf(s);
  const source = sideOf(s).drivers.find(({ name }) => name === driver);
  if (!source) throw new Error(`no driver is called "${driver}"`);
  return source.acousticCentre;
};
const planeOf = (s: Subject): Plane => {
  const reflection = reflectionOf(s);
  // Of the two faces of a plate, the one that looks towards the loudspeaker.
  const surface = surfacesAround(s.layout).find(
    ({ name, monitor, plane: { through, normal } }) =>
      sameSurface(reflection, { surface: name, monitor }) && dot(subtract(sourceOf(s), through), normal) >= 0,
  );
  if (!surface) throw new Error(`the layout has no ${reflection.surface}`);
  return surface.plane;
};
/** How far a point is in front of the surface. */
const from = (s: Subject, point: Vec3): number => {
  const { through, normal } = planeOf(s);
  return dot(subtract(point, through), normal);
};
const sourceHeight = quantity('h_s', 'acoustic centre from the surface', 'mm', (s) => from(s, sourceOf(s)));
const headHeight = quantity('h_e', 'head from the surface', 'mm', (s) => from(s, s.plan.head));
const along = quantity('r', 'between the two, along the surface', 'mm', (s) =>
  length(cross(subtract(s.plan.head, sourceOf(s)), planeOf(s).normal)),
);
const direct = quantity('d', 'acoustic centre to the head', 'mm', (s) => length(subtract(s.plan.head, sourceOf(s))));
const detour = quantity('Δ', 'longer than the direct path by', 'mm', (s) => reflectionOf(s).pathDifference);
const delay = quantity('t', 'later than the direct sound', 'ms', (s) => reflectionOf(s).delay);
const quieter = quantity('L', 'level re the direct sound', 'dB', (s) => reflectionOf(s).relativeLevel);
const notch = quantity('f_1', 'first notch', 'Hz', (s) => reflectionOf(s).firstNotch ?? Infinity);
const odd = quantity('n', 'least odd number that puts it into the driver’s band', '', (s) => {
  const { pathDifference, firstNotch } = reflectionOf(s);
  return Math.round(((firstNotch ?? NaN) * 2 * pathDifference) / (1000 * s.plan.speedOfSound));
});

const reflections: readonly Formula[] = [
  {
    id: 'detour',
    topic: 'Reflections',
    title: 'Path difference',
    result: detour,
    term: minus(
      root(plus(square(along), square(plus(sourceHeight, headHeight)))),
      root(plus(square(along), square(minus(sourceHeight, headHeight)))),
    ),
    source: 'mirror image of the source in the surface',
    limits:
      'A flat surface, large against the wave. The edges of one that ends nearby, as a desk does, send sound by other ways too: in the response.',
    known: (s) => reflectionIn(s) !== null,
    figure: 'reflection',
  },
  {
    id: 'delay',
    topic: 'Reflections',
    title: 'Delay',
    result: delay,
    term: over(detour, c),
    source: 'path over speed',
    known: (s) => reflectionIn(s) !== null,
    figure: 'reflection',
  },
  {
    id: 'quieter',
    topic: 'Reflections',
    title: 'Relative level',
    result: quieter,
    term: times(20, call('lg', over(direct, plus(direct, detour)))),
    source: 'spreading of a small source: 6 dB for each doubling of the distance',
    limits: 'Spreading alone: directivity and what the surface soaks up come on top, in the response.',
    known: (s) => reflectionIn(s) !== null,
    figure: 'reflection',
  },
  {
    id: 'notch',
    topic: 'Reflections',
    title: 'First notch',
    result: notch,
    term: times(odd, over(times(1000, c), times(2, detour))),
    source:
      'half a wave late; further ones at odd multiples (F. A. Everest and K. C. Pohlmann, Master Handbook of Acoustics)',
    limits:
      'Of the driver whose first is lowest, in the band that it plays. One reflection alone, as of a mirror; several, and the edges of a desk, move the notches of the response.',
    known: (s) => (reflectionIn(s)?.firstNotch ?? null) !== null,
    figure: 'reflection',
  },
];

export const soundFormulas: readonly Formula[] = [air, ...drivers, ...crossovers, ...reflections];
