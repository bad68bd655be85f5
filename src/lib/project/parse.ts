import * as v from 'valibot';
import { cabinetFaults } from './cabinetFaults.ts';
import { deskFaults } from './deskFaults.ts';
import { failure, pointerTo, success, type Fault, type Result } from './fault.ts';
import { stand as standFields } from './fields/stand.ts';
import { deepFreeze } from './freeze.ts';
import { got } from './got.ts';
import { migrate } from './migrate.ts';
import type { Layout, Project, TiltRule, ToeRule } from './project.ts';
import { expectation } from './range.ts';
import { referenceFaults } from './references.ts';
import { aimRules, projectSchema } from './schema.ts';
import { screenFaults } from './screenFaults.ts';
import { sizeFault } from './size.ts';
import { surfaceFaults } from './surfaceFaults.ts';
import { wallFaults } from './wallFaults.ts';

/** The longest text read as a project, in characters: a hundred times a full project, and parsed in well under a second. */
export const LONGEST_FILE = 4_000_000;

/** More faults than this help nobody; the rest are counted. */
const MOST_FAULTS = 50;

/**
 * Reads a project from the text of its file: JSON, migrated to the present version, every number in its range, every
 * reference resolved, every driver on its baffle. What depends on where the cabinets point is checked by the plan.
 * Never throws.
 */
export function parseProject(text: string): Result<Project> {
  if (text.length > LONGEST_FILE) {
    return failure({
      pointer: '',
      message: `expected a project file of at most ${LONGEST_FILE / 1e6} million characters, got ${(text.length / 1e6).toFixed(1)} million`,
    });
  }
  const json = parseJson(text);
  return json.ok ? checkProject(json.value) : json;
}

/** JSON from text, or the fault that it is none. */
export function parseJson(text: string): Result<unknown> {
  try {
    // A byte order mark is how some editors begin a file; JSON does not know it.
    return success(JSON.parse(text.replace(/^\uFEFF/, '')));
  } catch {
    return failure({ pointer: '', message: `expected JSON, got ${got(text.trim())}` });
  }
}

/** As `parseProject`, from a value that is JSON already. */
export function checkProject(value: unknown): Result<Project> {
  const document = migrate(value);
  if (!document.ok) return document;
  const tooMuch = sizeFault(document.value);
  if (tooMuch) return failure(tooMuch);
  const parsed = v.safeParse(projectSchema, document.value);
  if (!parsed.success) return { ok: false, faults: capped(parsed.issues.flatMap((issue) => faultsOf(issue))) };
  const project: Project = parsed.output;
  const unresolved = referenceFaults(project);
  const faults = [
    ...cabinetFaults(project.speaker),
    ...unresolved,
    ...liftFaults(project),
    ...frictionFaults(project),
    ...project.layouts.flatMap((layout, index) => roomFaults(layout, index, unresolved.length === 0)),
  ];
  return faults.length > 0 ? { ok: false, faults: capped(faults) } : success(deepFreeze(project));
}

/** One rule of an aim by itself; the faults' pointers start at it. */
export function checkAimRule(key: keyof typeof aimRules, value: unknown): Result<ToeRule | TiltRule> {
  const parsed = v.safeParse(aimRules[key], value);
  return parsed.success ? success(parsed.output) : { ok: false, faults: parsed.issues.flatMap((one) => faultsOf(one)) };
}

/**
 * The faults of an issue. Where one of several shapes was expected, the shape that the value was on its way to says what is
 * missing inside it; only a value that is on its way to none is told of them all.
 */
function faultsOf(issue: v.BaseIssue<unknown>, above: readonly unknown[] = []): Fault[] {
  const path = [...above, ...(issue.path ?? []).map(({ key }) => key)];
  const inside = (issue.issues ?? []).filter((inner) => inner.path !== undefined);
  if (inside.length > 0) return inside.flatMap((inner) => faultsOf(inner, path));
  return [
    {
      pointer: pointerTo(...path.map((key) => (typeof key === 'number' ? key : String(key)))),
      message: issue.message,
    },
  ];
}

/** Walls are looked at once there is a desk between them, screens and surfaces once there are walls round them and names are known. */
function roomFaults(layout: Layout, index: number, named: boolean): Fault[] {
  const desk = deskFaults(layout, index);
  const walls = desk.length > 0 ? desk : wallFaults(layout, index);
  const screens = walls.length > 0 ? walls : screenFaults(layout, index);
  return screens.length > 0 || !named ? screens : surfaceFaults(layout, index);
}

/** Only a solved lift may be left out. */
function liftFaults(project: Project): Fault[] {
  return project.layouts.flatMap(({ aim, stand }, index) =>
    stand.lift === undefined && aim.tilt.rule !== 'lift-to-ear'
      ? [
          {
            pointer: pointerTo('layouts', index, 'stand', 'lift'),
            message: `expected ${expectation(standFields.lift, undefined)}, got nothing: only "lift-to-ear" finds the lift by itself`,
          },
        ]
      : [],
  );
}

/** The most that friction may be is not less than the least. */
const frictionFaults = (project: Project): Fault[] =>
  project.layouts.flatMap(({ stand: { friction, frictionMost } }, index) =>
    frictionMost === null || frictionMost >= friction
      ? []
      : [
          {
            pointer: pointerTo('layouts', index, 'stand', 'frictionMost'),
            message: `expected at least the least friction, ${friction}, got ${frictionMost}`,
          },
        ],
  );

function capped(faults: readonly Fault[]): readonly Fault[] {
  if (faults.length <= MOST_FAULTS) return faults;
  return [
    ...faults.slice(0, MOST_FAULTS),
    { pointer: '', message: `expected a project, got ${faults.length - MOST_FAULTS} further faults like these` },
  ];
}
