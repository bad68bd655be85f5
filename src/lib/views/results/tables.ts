import type { CrossoverPlan, DriverPlan, Plan, ReflectionPlan, SidePlan, StandPlan } from '$lib/solution/document.ts';
import { widthRange } from '$lib/solution/widthSpread.ts';
import { posturesOf, type PosturePlan, type PostureSide } from '$lib/solution/postures.ts';
import { screensSeen } from '$lib/solution/screensSeen.ts';
import { servedText } from '$lib/solution/servedText.ts';
import { obstacleText } from '$lib/solution/findings/surfaceText.ts';
import { sameSurface, surfaceReflections, type SurfaceReflections } from '$lib/solution/leadingReflections.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Lengths } from '$lib/project/units.ts';
import {
  angleText,
  countText,
  formatNumber,
  lengthText,
  quantityText,
  rangeText,
  tapeText,
} from '$lib/views/ui/formatNumber.ts';
import { missText, spreadTexts, withSpread } from '$lib/views/ui/spread.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { eachAsOne, type Group, type Row, type Table } from './table.ts';

/** The plan's numbers as tables, in the order in which they are asked for. */
export function tablesOf(plan: Plan, unit: Lengths): readonly Table[] {
  const placed = [aim(plan, unit), postures(plan, unit), triangle(plan, unit), screens(plan, unit)];
  return [...placed, stands(plan, unit), drivers(plan, unit), crossovers(plan, unit), reflections(plan, unit)]
    .filter(({ groups }) => groups.length > 0)
    .map(eachAsOne);
}

const columns = ['Left', 'Right'] as const;

/** One row for a number that both sides have. */
const bySide = (name: string, plan: Plan, cell: (of: SidePlan, side: SideName) => string): Row => ({
  name,
  cells: sideNames.map((side) => cell(plan.sides[side], side)),
});

function aim(plan: Plan, unit: Lengths): Table {
  const row = (name: string, cell: (of: SidePlan, side: SideName) => string): Row => bySide(name, plan, cell);
  const spread = { left: spreadTexts(plan, 'left'), right: spreadTexts(plan, 'right') };
  return {
    title: 'Aim',
    note: '±: what the uncertainty of the measured values leaves open, in at least nine cases of ten.',
    columns,
    groups: [
      {
        rows: [
          row('Toe', ({ toe }, side) => withSpread(angleText(toe), spread[side].toe)),
          row('Tilt', ({ tilt }, side) => withSpread(angleText(tilt), spread[side].tilt)),
          row('Axis elevation', ({ axisElevation }) => angleText(axisElevation)),
          row('Lift', ({ lift }, side) => withSpread(tapeText(lift, unit), spread[side].lift)),
          row('Front edge over desk', ({ frontEdgeHeight }) => tapeText(frontEdgeHeight, unit)),
          row('Rear edge over desk', ({ rearEdgeHeight }) => tapeText(rearEdgeHeight, unit)),
          row('Aimed point over desk', ({ aimedPoint }) => tapeText(aimedPoint.z, unit)),
          row('Miss at the head', ({ miss }, side) => withSpread(tapeText(miss, unit), missText(plan, side))),
        ],
      },
    ],
  };
}

/** Each way of sitting under the one aim, beside the aim for it alone. Nothing where there is the seat only. */
function postures(plan: Plan, unit: Lengths): Table {
  const all = posturesOf(plan);
  const row = (name: string, cell: (side: PostureSide) => string, { sides }: PosturePlan): Row => ({
    name,
    cells: sideNames.map((side) => cell(sides[side])),
  });
  const besides = (cell: (alone: NonNullable<PostureSide['alone']>) => string) => (side: PostureSide) =>
    side.alone === null ? NONE : cell(side.alone);
  return {
    title: 'Postures',
    columns,
    note: servedText(plan.layout),
    groups: (all.length > 1 ? all : []).map((posture) => ({
      name: posture.served ? posture.name : `${posture.name}, not aimed for`,
      rows: [
        row('Head off the axis', ({ offAxis }) => angleText(offAxis), posture),
        row('Miss at this head', ({ miss }) => tapeText(miss, unit), posture),
        row(
          'Off axis, if aimed for it alone',
          besides(({ offAxis }) => angleText(offAxis)),
          posture,
        ),
        row(
          'Toe for it alone',
          besides(({ toe }) => angleText(toe)),
          posture,
        ),
        row(
          'Tilt for it alone',
          besides(({ tilt }) => angleText(tilt)),
          posture,
        ),
        { name: 'Angle at this head', cells: sideNames.map(() => angleText(posture.triangle.angle)) },
      ],
    })),
  };
}

function triangle({ triangle: at }: Plan, unit: Lengths): Table {
  return {
    title: 'Triangle',
    columns: ['Pair'],
    groups: [
      {
        rows: [
          { name: 'Angle at the head', cells: [angleText(at.angle)] },
          { name: 'Between aimed points', cells: [tapeText(at.base, unit)] },
          { name: 'Left to head', cells: [tapeText(at.leftDistance, unit)] },
          { name: 'Right to head', cells: [tapeText(at.rightDistance, unit)] },
          { name: 'Arrival difference, left − right', cells: [quantityText(at.timeDifference, 1, 'µs')] },
          { name: 'Level difference, right − left', cells: [quantityText(at.levelDifference, 2, 'dB')] },
        ],
      },
    ],
  };
}

const screens = (plan: Plan, unit: Lengths): Table => ({
  title: 'Screens',
  columns: ['From the head'],
  groups: screensSeen(plan).map(({ distance, angle }, index, all) => ({
    ...(all.length > 1 ? { name: `Screen ${index + 1}` } : {}),
    rows: [
      { name: 'Eyes to its middle', cells: [tapeText(distance, unit)] },
      { name: 'Seen under', cells: [angleText(angle)] },
    ],
  })),
});

/** One group for each entry of a list that both sides hold in the same order. */
function groupsOf<Entry>(
  plan: Plan,
  entries: (side: SidePlan) => readonly Entry[],
  name: (entry: Entry) => string,
  rows: readonly (readonly [name: string, cell: (entry: Entry) => string])[],
): readonly Group[] {
  const [left, right] = sideNames.map((side) => entries(plan.sides[side]));
  return (left ?? []).flatMap((entry, index) => {
    const other = right?.[index];
    if (other === undefined) return [];
    return [
      { name: name(entry), rows: rows.map(([label, cell]) => ({ name: label, cells: [cell(entry), cell(other)] })) },
    ];
  });
}

const drivers = (plan: Plan, unit: Lengths): Table => ({
  title: 'Drivers',
  columns,
  groups: groupsOf<DriverPlan>(
    plan,
    (side) => side.drivers,
    ({ name }) => name,
    [
      ['To the head', ({ distance }) => tapeText(distance, unit)],
      ['Head off its axis', ({ offAxis }) => angleText(offAxis)],
      ['Over the desk', ({ position }) => tapeText(position.z, unit)],
    ],
  ),
});

const sumText = ({ sumKnown, sumLevel }: CrossoverPlan): string => {
  if (!sumKnown) return 'not known';
  return sumLevel === null ? 'cancelled' : quantityText(sumLevel, 2, 'dB');
};

function crossovers(plan: Plan, unit: Lengths): Table {
  const known = plan.sides.left.crossovers.every(({ sumKnown }) => sumKnown);
  const groups = groupsOf<CrossoverPlan>(
    plan,
    (side) => side.crossovers,
    ({ between, frequency }) => `${between.join(' and ')}, ${quantityText(frequency, 0, 'Hz')}`,
    [
      ['Path difference, lower − upper', ({ pathDifference }) => tapeText(pathDifference, unit)],
      ['Phase', ({ phase }) => `${formatNumber(phase, 1)}°`],
      ['Sum at the crossover', sumText],
    ],
  );
  return {
    title: 'Crossovers',
    columns,
    note: known
      ? 'The sum is against that at the design point, where the maker lined the drivers up.'
      : 'Paths alone do not say how the drivers add up: that depends on where the maker lined them up, the design point. The page on the sound offers the usual one.',
    groups: known
      ? groups
      : groups.map((group) => ({
          ...group,
          rows: group.rows.map((row) => (row.name === 'Sum at the crossover' ? { ...row, unknown: true } : row)),
        })),
  };
}

const NONE = '–';

function reflections(plan: Plan, unit: Lengths): Table {
  const row = (
    name: string,
    of: SurfaceReflections,
    cell: (one: ReflectionPlan) => string,
    known: (one: ReflectionPlan) => boolean = () => true,
  ): Row => ({
    name,
    unknown: sideNames.every((side) => of[side] === null || !known(of[side])),
    cells: sideNames.map((side) => (of[side] === null ? NONE : cell(of[side]))),
  });
  const lands = (of: SurfaceReflections): string[] =>
    sideNames.map(
      (side) =>
        plan.sides[side].reflections
          .filter((one) => one.lands && sameSurface(one, of))
          .map(({ driver }) => driver)
          .join(', ') || 'no',
    );
  const told = surfaceReflections(plan);
  const missed = new Set(
    sideNames
      .flatMap((side) => plan.sides[side].reflections)
      .filter((one) => !told.some((of) => sameSurface(one, of)))
      .map(({ surface, monitor }) => causeName(surface, monitor)),
  );
  return {
    title: 'Reflections',
    columns,
    note: `Of each surface the driver whose first notch is lowest, in the band that it plays. Levels by spreading alone: what the cabinet beams, what the surface soaks up and what stands in the way come on top.${missed.size > 0 ? ` The mirror image’s way passes beside: ${[...missed].join(', ')}.` : ''}`,
    groups: told.map((of) => ({
      name: capital(causeName(of.surface, of.monitor)),
      rows: [
        { name: 'Hits the surface', cells: lands(of) },
        row('In the way', of, ({ screenedBy }) => (screenedBy === null ? 'nothing' : obstacleText(screenedBy))),
        row(
          'First notch',
          of,
          ({ firstNotch, driver }) =>
            firstNotch === null ? 'none' : `${quantityText(firstNotch, 0, 'Hz')}, ${driver}`,
          ({ firstNotch }) => firstNotch !== null,
        ),
        row('Path difference', of, ({ pathDifference }) => tapeText(pathDifference, unit)),
        row('Delay', of, ({ delay }) => quantityText(delay, 2, 'ms')),
        row('Relative level', of, ({ relativeLevel }) => quantityText(relativeLevel, 1, 'dB')),
      ],
    })),
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function stands({ stand }: Plan, unit: Lengths): Table {
  const row = (name: string, cell: (one: StandPlan) => string): Row => ({
    name,
    cells: sideNames.map((side) => cell(stand[side])),
  });
  // Of what is sawn and drilled a caliper tells tenths; how high it must be, a tape has told.
  const mm = (value: number): string => lengthText(value, unit);
  const high = (value: number): string => tapeText(value, unit);
  return {
    title: 'Stand',
    columns,
    groups: [
      {
        rows: [
          row('Slices', ({ layers }) => countText(layers, 'slice', 'slices')),
          row('Cut from', ({ stock }) => stock),
          row('Finished width', ({ width }) => mm(width)),
          row('Width uncertainty', ({ widthSpread }) =>
            widthSpread === null ? 'of one piece' : rangeText(widthRange(widthSpread), unit),
          ),
          row('Width shortfall', ({ leftOver }) => (leftOver >= 0 ? mm(leftOver) : `none: ${mm(-leftOver)} wider`)),
          row('Height at the front', ({ frontHeight }) => high(frontHeight)),
          row('Height at the rear', ({ rearHeight }) => high(rearHeight)),
          row('Rods', ({ rods }) => (rods.length === 0 ? 'none' : String(rods.length))),
          row('Rod hole', ({ rods: [rod] }) => (rod === undefined ? 'none' : mm(rod.diameter))),
          row('Rod-hole edge distance', ({ rodEdge }) => (rodEdge === null ? 'no rods' : mm(rodEdge))),
          row('Mass', ({ mass }) => quantityText(mass, 2, 'kg')),
        ],
      },
    ],
  };
}
