import { radians } from '$lib/geometry/angle.ts';
import { sixSided } from '$lib/geometry/solid.ts';
import { earsOf, sceneOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { placeFaults } from '$lib/layout/soundness.ts';
import { pointerTo, unforeseen, type Fault } from '$lib/project/fault.ts';
import { glueLineOf } from '$lib/project/glueLine.ts';
import { once } from '$lib/project/once.ts';
import { plainText } from '$lib/project/sentence.ts';
import { printerOf } from '$lib/project/printer.ts';
import {
  sideNames,
  type Layout,
  type Posture,
  type Project,
  type SideName,
  type StandSettings,
  type Stock,
} from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { balanceOf } from '$lib/stand/balance.ts';
import { buildStand, type StandBody } from '$lib/stand/build.ts';
import type { Shop } from '$lib/stand/buildRequest.ts';
import { standParts, type Take } from '$lib/workshop/standParts.ts';
import { balancePlan } from './balancePlan.ts';
import { findingsOf } from '$lib/solution/findings/all.ts';
import type { Placed, Scene } from '$lib/solution/findings/check.ts';
import { placedOf } from '$lib/solution/findings/placed.ts';
import type { Outcome } from './outcome.ts';
import { outlineFault, type Made } from './outlines.ts';
import { settingAtFault } from './settingAtFault.ts';
import { screensAround } from './screensAround.ts';
import { sidePlan } from './sides.ts';
import type { Plan } from './document.ts';
import { standPlan } from './standPlan.ts';
import { trianglePlan } from './trianglePlan.ts';
import { widthSpread } from './widthSpread.ts';

/**
 * Where everything is and the stands under it: the part of a solution that a page draws at once, and that says whether there
 * is an answer. Pure.
 *
 * Refused as `unsound` when the numbers contradict each other once the cabinets are aimed (a head in a cabinet, cabinets
 * in each other, a thin end under its minimum), as `no-answer` when the geometry cannot be had, when an outline cannot be
 * cut as it is, or when the program itself fails: nothing is thrown. Pointers start at the project.
 *
 * @param advice Whether the findings of stands that tip say what would hold them. It takes building a dozen other stands;
 *   whoever only compares findings, which say the same without it, leaves it out.
 */
export function plan(project: Project, layout: Layout, advice = true): Outcome<Plan> {
  try {
    return planned(project, layout, advice);
  } catch (thrown) {
    const pointer = settingAtFault(layout.stand, (stand) => hasAnswer(project, { ...layout, stand }));
    const faults = fromProject([unforeseen(thrown, pointer)], project.layouts.indexOf(layout));
    return { ok: false, kind: 'no-answer', faults };
  }
}

/**
 * The plan as it is in one of the layout's postures, its aim the layout's own: the head there, and what rides along with the
 * desk at the desk's height. Null where that cannot be, as where the head is in a cabinet then.
 */
export function planIn(project: Project, layout: Layout, posture: Posture): Plan | null {
  try {
    const found = planned(project, layout, false, sceneOf(layout, posture));
    return found.ok ? found.value : null;
  } catch {
    return null;
  }
}

function hasAnswer(project: Project, layout: Layout): boolean {
  try {
    return planned(project, layout, false).ok;
  } catch {
    return false;
  }
}

function planned(project: Project, layout: Layout, advice: boolean, scene = layout): Outcome<Plan> {
  const refuse = (kind: 'unsound' | 'no-answer', faults: readonly Fault[]): Outcome<never> => ({
    ok: false,
    kind,
    faults: fromProject(faults, project.layouts.indexOf(layout)),
  });
  const speaker = asStood(project.speaker);
  const [left, right] = [placeSide(speaker, layout, 'left', scene), placeSide(speaker, layout, 'right', scene)];
  if (!left.ok || !right.ok) return refuse('no-answer', [...faultsOf(left), ...faultsOf(right)]);
  const poses = { left: left.value, right: right.value };
  const cabinets = both((side) => sixSided(poses[side].cabinet));
  const clashes = placeFaults(scene, cabinets);
  if (clashes.length > 0) return refuse('unsound', clashes);

  const stock = stockFor(project, layout);
  const shop = shopOf(project);
  const standWith = (settings: StandSettings) => (side: SideName) =>
    buildStand(poses[side], speaker, { ...settings, glue: glueLineOf(project, settings) }, stock, shop);
  const stood = both(standWith(layout.stand));
  if (!stood.left.ok || !stood.right.ok) {
    const refusals = sideNames.map((side) => stood[side]).filter((one) => !one.ok);
    const kind = refusals.some((one) => one.kind === 'unsound') ? 'unsound' : 'no-answer';
    return refuse(kind, distinct(refusals.filter((one) => one.kind === kind).flatMap((one) => one.faults)));
  }
  const stands = { left: stood.left.value, right: stood.right.value };
  const made = standParts(stands);
  const fault = outlineFault({ stands, parts: made.parts }, layout.stand, (settings) =>
    madeOf(both(standWith(settings))),
  );
  if (fault) return refuse('no-answer', [fault]);
  const sites = advice ? both((side) => ({ speaker, layout, side, stock, shop })) : null;
  const layoutIndex = project.layouts.indexOf(layout);
  return { ok: true, value: planOf(project, scene, layoutIndex, { poses, cabinets, stands, ...made, sites }) };
}

/** What every plan begins with: the cabinets in their places, and the stands under them. */
interface Standing extends Pick<Placed, 'poses' | 'cabinets'>, Pick<Scene, 'sites'> {
  readonly stands: Readonly<Record<SideName, StandBody>>;
  readonly parts: Plan['parts'];
  readonly takes: Readonly<Record<SideName, readonly Take[]>>;
}

function planOf(project: Project, layout: Layout, layoutIndex: number, standing: Standing): Plan {
  const speaker = asStood(project.speaker);
  const { poses, cabinets, stands, parts, takes, sites } = standing;
  const placed = placedOf(speaker, layout, { poses, cabinets });
  const { head, speedOfSound: speed } = placed;
  const glue = glueLineOf(project, layout.stand);

  const sides = once(() => {
    const screens = screensAround(speaker, layout, cabinets);
    return both((side) => sidePlan(speaker, layout, poses[side], { screens, side }, head, speed));
  });
  const balances = once(() => both((side) => balanceOf(speaker, poses[side], stands[side], layout.stand)));
  const balance = once(() => both((side) => balancePlan(balances()[side], speaker.mass)));
  const stand = once(() =>
    both((side) => standPlan(stands[side], takes[side], widthSpread(stands[side], project, glue))),
  );
  const checks = once(() =>
    findingsOf({
      ...placed,
      footprints: both((side) => stands[side].footprint),
      balances: balances(),
      blocks: both((side) => stands[side].blocks),
      display: project.display,
      tools: project.shop,
      sites,
    }),
  );

  return {
    project,
    layout,
    layoutIndex,
    speedOfSound: speed,
    head,
    ears: earsOf(layout.listener, layout.desk),
    triangle: trianglePlan(placed.triangle, speed),
    parts,
    get sides() {
      return sides();
    },
    get balance() {
      return balance();
    },
    get stand() {
      return stand();
    },
    get checks() {
      return checks();
    },
  };
}

const both = <Value>(make: (side: SideName) => Value): Record<SideName, Value> => ({
  left: make('left'),
  right: make('right'),
});

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
  faults.filter((fault, i) => faults.findIndex((other) => plainText(other.message) === plainText(fault.message)) === i);

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
