import { degrees, radians } from '$lib/geometry/angle.ts';
import { sixSided } from '$lib/geometry/solid.ts';
import { earsOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { placeFaults } from '$lib/layout/soundness.ts';
import type { Triangle } from '$lib/layout/triangle.ts';
import { pointerTo, unforeseen, type Fault } from '$lib/project/fault.ts';
import { glueLineOf } from '$lib/project/glueLine.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { printerOf } from '$lib/project/printer.ts';
import {
  sideNames,
  type Layout,
  type Project,
  type SideName,
  type StandSettings,
  type Stock,
} from '$lib/project/project.ts';
import { balanceOf } from '$lib/stand/balance.ts';
import { buildStand, type StandBody } from '$lib/stand/build.ts';
import type { Shop } from '$lib/stand/commission.ts';
import { standParts } from '$lib/workshop/standParts.ts';
import { balancePlan } from './balancePlan.ts';
import type { Plan, TrianglePlan } from './document.ts';
import { findingsOf } from './findings/all.ts';
import { placedOf } from './findings/placed.ts';
import type { Outcome } from './outcome.ts';
import { outlineFault, type Made } from './outlines.ts';
import { settingAtFault } from './settingAtFault.ts';
import { screensAround } from './screensAround.ts';
import { sidePlan } from './sides.ts';
import { standPlan } from './standPlan.ts';
import { widthSpread } from './widthSpread.ts';

const MICROSECONDS_PER_MM = 1000;

/**
 * The one door to results: everything that follows from a project and one of its layouts, but for the arrangement on
 * sheets. Pure; a few hundred microseconds at most.
 *
 * Refused as `unsound` when the numbers contradict each other once the cabinets are aimed (a head in a cabinet, cabinets
 * in each other, a thin end under its minimum), as `no-answer` when the geometry cannot be had, when an outline cannot be
 * cut as it is, or when the program itself fails: nothing is thrown. Pointers start at the project.
 *
 * @param advice Whether the findings of stands that tip say what would hold them. It takes building a dozen other stands;
 *   whoever only compares findings, which say the same without it, leaves it out.
 */
export const plan = (project: Project, layout: Layout, advice = true): Outcome<Plan> =>
  toTheEnd(planSteps(project, layout, advice));

/** `plan` with a pause after each part of the work: scripts that run for the first time are a hundred times slower. */
export function* planSteps(project: Project, layout: Layout, advice = true): Generator<undefined, Outcome<Plan>> {
  try {
    return yield* plannedSteps(project, layout, advice);
  } catch (thrown) {
    const pointer = settingAtFault(layout.stand, (stand) => isPlannable(project, { ...layout, stand }, advice));
    const faults = fromProject([unforeseen(thrown, pointer)], project.layouts.indexOf(layout));
    return { ok: false, kind: 'no-answer', faults };
  }
}

function isPlannable(project: Project, layout: Layout, advice: boolean): boolean {
  try {
    return toTheEnd(plannedSteps(project, layout, advice)).ok;
  } catch {
    return false;
  }
}

function* plannedSteps(project: Project, layout: Layout, advice: boolean): Generator<undefined, Outcome<Plan>> {
  const refuse = (kind: 'unsound' | 'no-answer', faults: readonly Fault[]): Outcome<never> => ({
    ok: false,
    kind,
    faults: fromProject(faults, project.layouts.indexOf(layout)),
  });
  const { speaker } = project;
  const [left, right] = [placeSide(speaker, layout, 'left'), placeSide(speaker, layout, 'right')];
  if (!left.ok || !right.ok) return refuse('no-answer', [...faultsOf(left), ...faultsOf(right)]);
  const poses = { left: left.value, right: right.value };
  const cabinets = both((side) => sixSided(poses[side].cabinet));
  const clashes = placeFaults(layout, cabinets);
  if (clashes.length > 0) return refuse('unsound', clashes);
  yield;

  const stock = stockFor(project, layout);
  const shop = shopOf(project);
  const standWith = (settings: StandSettings) => (side: SideName) =>
    buildStand(poses[side], speaker, { ...settings, glue: glueLineOf(project, settings) }, stock, shop);
  const stood = yield* bothInSteps(standWith(layout.stand));
  if (!stood.left.ok || !stood.right.ok) {
    const refusals = sideNames.map((side) => stood[side]).filter((one) => !one.ok);
    const kind = refusals.some((one) => one.kind === 'unsound') ? 'unsound' : 'no-answer';
    return refuse(kind, distinct(refusals.filter((one) => one.kind === kind).flatMap((one) => one.faults)));
  }
  const stands = { left: stood.left.value, right: stood.right.value };
  const { parts, takes } = standParts(stands);
  const fault = outlineFault({ stands, parts }, layout.stand, (settings) => madeOf(both(standWith(settings))));
  if (fault) return refuse('no-answer', [fault]);
  yield;

  const balances = both((side) => balanceOf(speaker, poses[side], stands[side], layout.stand));
  yield;

  const placed = placedOf(speaker, layout, { poses, cabinets });
  const { head, triangle, speedOfSound: sound } = placed;
  const screens = screensAround(speaker, layout, cabinets);
  return {
    ok: true,
    value: {
      layout: layout.name,
      speedOfSound: sound,
      head,
      ears: earsOf(layout.listener, layout.desk),
      sides: both((side) => sidePlan(speaker, layout, poses[side], { screens, side }, head, sound)),
      triangle: trianglePlan(triangle, sound),
      findings: findingsOf({
        ...placed,
        footprints: both((side) => stands[side].footprint),
        balances,
        blocks: both((side) => stands[side].blocks),
        display: project.display,
        tools: shop.tools,
        sites: advice ? both((side) => ({ speaker, layout, side, stock, shop })) : null,
      }),
      balance: both((side) => balancePlan(balances[side], speaker.mass)),
      stand: both((side) =>
        standPlan(stands[side], takes[side], widthSpread(stands[side], project, glueLineOf(project, layout.stand))),
      ),
      parts,
    },
  };
}

const both = <Value>(make: (side: SideName) => Value): Record<SideName, Value> => ({
  left: make('left'),
  right: make('right'),
});

/** With a pause between them. */
function* bothInSteps<Value>(make: (side: SideName) => Value): Generator<undefined, Record<SideName, Value>> {
  const left = make('left');
  yield;
  return { left, right: make('right') };
}

function madeOf({ left, right }: Readonly<Record<SideName, Outcome<StandBody>>>): Made | null {
  if (!left.ok || !right.ok) return null;
  const stands = { left: left.value, right: right.value };
  return { stands, parts: standParts(stands).parts };
}

const faultsOf = (result: { readonly ok: true } | { readonly ok: false; readonly faults: readonly Fault[] }) =>
  result.ok ? [] : result.faults;

const fromProject = (faults: readonly Fault[], index: number): Fault[] =>
  faults.map(({ pointer, message }) => ({ pointer: `${pointerTo('layouts', index)}${pointer}`, message }));

/** Both stands often fail alike; once is enough. */
const distinct = (faults: readonly Fault[]): Fault[] =>
  faults.filter((fault, i) => faults.findIndex((other) => other.message === fault.message) === i);

const shopOf = (project: Project): Shop => ({
  stocks: project.stock.map(({ name, thickness, density, taper }) => ({
    name,
    thickness,
    density,
    taper: radians(taper ?? project.cutter.taper),
  })),
  printer: printerOf(project),
  tools: project.shop,
});

function stockFor({ stock }: Project, layout: Layout): Stock {
  const chosen = stock.find(({ name }) => name === layout.stand.stock) ?? stock[0];
  if (!chosen) throw new Error('The project was not checked: it has no stock.');
  return chosen;
}

const trianglePlan = ({ base, leftDistance, rightDistance, angle }: Triangle, sound: number): TrianglePlan => ({
  base,
  leftDistance,
  rightDistance,
  angle: degrees(angle),
  timeDifference: ((leftDistance - rightDistance) / sound) * MICROSECONDS_PER_MM,
  levelDifference: 20 * Math.log10(leftDistance / rightDistance),
});
