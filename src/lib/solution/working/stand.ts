import type { Point } from '$lib/geometry/point.ts';
import type { StandPlan } from '$lib/solution/document.ts';
import { widthRange } from '$lib/solution/widthSpread.ts';
import type { Formula } from './formula.ts';
import { frontEdge, quantity, tilt } from './quantities.ts';
import { glueLineOf } from '$lib/project/glueLine.ts';
import { asMm, says } from '$lib/project/sentence.ts';
import { asStood } from '$lib/project/stood.ts';
import { call, inMillimetres, minus, over, plus, times, type Subject } from './term.ts';

const standOf = ({ plan, side }: Subject): StandPlan => plan.stand[side];
const settings = ({ layout }: Subject) => layout.stand;

/** Along the slope from the cabinet's front bottom edge to the ends of the wood's top: margins, or a stop where it stands. */
const ends = (s: Subject): readonly [front: number, rear: number] => {
  const { stop, frontMargin, rearMargin } = settings(s);
  const lip = stop?.thickness ?? 0;
  const lowRear = s.plan.sides[s.side].tilt >= 0;
  const [atFront, atRear] = lowRear ? [0, lip] : [lip, 0];
  return [Math.max(frontMargin, atFront), asStood(s.project.speaker).depth + Math.max(rearMargin, atRear)];
};

const asked = quantity('w', 'width asked for', 'mm', (s) => standOf(s).widthAsked);
const thickness = quantity('t', 'thickness of a slice', 'mm', (s) => standOf(s).thickness);
const glue = quantity('g', 'glue line', 'mm', (s) => glueLineOf(s.project, settings(s)));
const veneer = quantity('v', 'veneer', 'mm', (s) => settings(s).veneer);
const layers = quantity('n', 'slices', '', (s) => standOf(s).layers);
const width = quantity('W', 'finished width', 'mm', (s) => standOf(s).width);
const shortfall = quantity('u', 'width shortfall', 'mm', (s) => Math.max(0, standOf(s).leftOver));
const spreadOf = (s: Subject) => standOf(s).widthSpread;
const boards = quantity('n', 'boards across the width', '', (s) => spreadOf(s)?.boards ?? NaN);
const read = quantity('u_t', 'how far a thickness as read may be off', 'mm', (s) => spreadOf(s)?.read ?? NaN);
const glueMore = quantity(
  'g_m',
  'what glue may add to the width, all joints together',
  'mm',
  (s) => spreadOf(s)?.glue.most ?? NaN,
);
const widerBy = quantity('ΔW', 'most that the stand comes out wider than planned by', 'mm', (s) => {
  const spread = spreadOf(s);
  return spread === null ? NaN : widthRange(spread)[1];
});
const before = quantity('s_f', 'wood before the cabinet’s front edge, along the slope', 'mm', (s) => ends(s)[0]);
const behind = quantity('s_r', 'wood behind the cabinet’s front edge, along the slope', 'mm', (s) => ends(s)[1]);
const pad = quantity('p', 'pad', 'mm', (s) => settings(s).pad);
const feet = quantity('q', 'feet', 'mm', (s) => settings(s).feet);
const front = quantity('H_f', 'height of the wood at its front', 'mm', (s) => standOf(s).frontHeight);
const rear = quantity('H_r', 'height of the wood at its rear', 'mm', (s) => standOf(s).rearHeight);
const rod = quantity('d', 'rod', 'mm', (s) => settings(s).rods?.diameter ?? NaN);
const clearance = quantity('k', 'clearance', 'mm', (s) => settings(s).rods?.clearance ?? NaN);
const hole = quantity('d_h', 'hole for a rod', 'mm', (s) => standOf(s).rods[0]?.diameter ?? NaN);
const edge = quantity('e', 'least wood round a rod hole', 'mm', (s) => standOf(s).rodEdge ?? NaN);
const toEdge = quantity('a', 'middle of a rod hole to the nearest edge of the slice', 'mm', (s) => {
  const { slice, rods } = standOf(s);
  return Math.min(...rods.map(({ u, z }) => distanceToOutline([u, z], slice)));
});
const volume = quantity('V', 'volume of the wood', 'mm³', (s) => standOf(s).volume);
const density = quantity(
  'ρ',
  'density of the board',
  'kg/m³',
  (s) => s.project.stock.find(({ name }) => name === standOf(s).stock)?.density ?? NaN,
);
const mass = quantity('m', 'mass of the stand', 'kg', (s) => standOf(s).mass);

const stacked = (s: Subject): boolean => settings(s).build === 'stacked';
const turned = (s: Subject): boolean => settings(s).base === 'turned';
const withRods = (s: Subject): boolean => standOf(s).rods.length > 0;
const topOf = (s: ReturnType<typeof quantity>, sign: 1 | -1) =>
  sign === 1
    ? minus(plus(frontEdge, times(s, call('sin', tilt))), times(pad, call('cos', tilt)), feet)
    : minus(frontEdge, times(s, call('sin', tilt)), times(pad, call('cos', tilt)), feet);

export const standFormulas: readonly Formula[] = [
  {
    id: 'layers',
    topic: 'Stand',
    title: 'Slices',
    result: layers,
    term: call('max', 1, call('round', over(plus(minus(asked, times(2, veneer)), glue), plus(thickness, glue)))),
    holds: stacked,
    when: 'A stand stacked from slices of one board.',
    limits: says`The thickness as measured: boards vary by ±${asMm(0.2)}, and over many slices that adds up.`,
    figure: 'stack',
  },
  {
    id: 'width',
    topic: 'Stand',
    title: 'Finished width',
    result: width,
    term: plus(times(layers, thickness), times(minus(layers, 1), glue), times(2, veneer)),
    holds: stacked,
    when: 'A stand stacked from slices of one board.',
    figure: 'stack',
  },
  {
    id: 'width-shortfall',
    topic: 'Stand',
    title: 'Width shortfall',
    result: shortfall,
    term: call('max', 0, minus(asked, width)),
    limits: 'Nothing where the stand comes out wider than asked for.',
    figure: 'stack',
  },
  {
    id: 'width-spread',
    topic: 'Stand',
    title: 'Width uncertainty',
    result: widerBy,
    term: plus(times(boards, read), glueMore),
    known: (s) => spreadOf(s) !== null,
    limits:
      'All boards off alike, as from one reading; each off for itself they are off by √n times one. Narrower by the same without the glue, and by glue lines that were counted and turn out to be nothing. Once the glue line is measured, glue adds nothing to it.',
    figure: 'stack',
  },
  {
    id: 'front-height',
    topic: 'Stand',
    title: 'Height at the front',
    result: front,
    term: topOf(before, 1),
    holds: turned,
    when: 'A stand turned with its cabinet.',
    limits: 'From the base to the line of the top.',
    figure: 'profile',
  },
  {
    id: 'rear-height',
    topic: 'Stand',
    title: 'Height at the rear',
    result: rear,
    term: topOf(behind, -1),
    holds: turned,
    when: 'A stand turned with its cabinet.',
    limits: 'From the base to the line of the top.',
    figure: 'profile',
  },
  {
    id: 'rod-hole',
    topic: 'Stand',
    title: 'Rod hole',
    result: hole,
    term: plus(rod, clearance),
    holds: withRods,
    when: 'Where there are rods.',
    limits: 'The rod as measured.',
    figure: 'rod',
  },
  {
    id: 'rod-edge',
    topic: 'Stand',
    title: 'Rod-hole edge distance',
    result: edge,
    term: minus(toEdge, over(hole, 2)),
    holds: (s) => withRods(s) && stacked(s),
    when: 'Where there are rods.',
    figure: 'rod',
  },
  {
    id: 'mass',
    topic: 'Stand',
    title: 'Mass of the stand',
    result: mass,
    term: over(times(volume, density), inMillimetres(1e9, 3)),
    holds: stacked,
    when: 'A stand stacked from slices of one board.',
    limits: 'The wood alone: rods, glue, veneer, feet and pad count as weightless.',
    figure: 'profile',
  },
];

function distanceToOutline(at: Point, outline: readonly Point[]): number {
  return Math.min(
    ...outline.map((from, index) => distanceToLine(at, from, outline[(index + 1) % outline.length] ?? from)),
  );
}

function distanceToLine([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
