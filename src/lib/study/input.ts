import { changedAt } from '$lib/project/changedAt.ts';
import { failure, pointerTo, success, type Fault, type Result } from '$lib/project/fault.ts';
import type { NumberField } from '$lib/project/fields/field.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { got } from '$lib/project/got.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project, TiltRule, ToeRule } from '$lib/project/project.ts';
import { expectation } from '$lib/project/range.ts';

/** One number that is set to something else. */
export interface Edit {
  /** JSON pointer within the layout; or, where it begins with a key of the project, such as /speaker, within that. */
  readonly pointer: string;
  readonly value: number;
}

/** The same, or a rule of toe or tilt that is set to another. */
export type Change = Edit | { readonly pointer: string; readonly value: AimRule };

export type AimRule = ToeRule | TiltRule;

/** A project with one layout changed, and that layout, which is in it. */
export interface Edited {
  readonly project: Project;
  readonly layout: Layout;
}

/** A number that can be changed. */
export interface Input {
  readonly pointer: string;
  readonly field: NumberField;
  /** What it is now; null where it is none. */
  readonly now: number | null;
}

/** The number at a pointer within the layout, or the fault that lists those there are. @param at Where the pointer stands. */
export function inputAt(layout: Layout, pointer: unknown, at: string): Result<Input> {
  return inputAmong(inputsOf(layout, LAYOUT), 'the layout', pointer, at);
}

/**
 * The same of any number that an edit may set: of the layout, or of what all layouts share. The two have no key with a number
 * in it in common.
 */
export function inputOfProject(project: Project, layout: Layout, pointer: unknown, at: string): Result<Input> {
  const shared = inputsOf({ ...project, layouts: [] }, []);
  return inputAmong([...inputsOf(layout, LAYOUT), ...shared], 'the layout or the project', pointer, at);
}

const LAYOUT = ['layouts', '*'];

function inputAmong(known: readonly Input[], where: string, pointer: unknown, at: string): Result<Input> {
  const found = known.find((input) => input.pointer === pointer);
  if (found) return success(found);
  const list = known.map((input) => input.pointer).join(', ');
  return failure({
    pointer: at,
    message: `expected the pointer of a number in ${where} (${list}), got ${got(pointer)}`,
  });
}

/** Every number that the fields describe and that has a place in a part of the project, in the order of the file. */
function inputsOf(part: object, from: readonly string[]): Input[] {
  const found: Input[] = [];
  const walk = (value: unknown, steps: readonly string[], pattern: readonly string[]): void => {
    const field = fieldTable[pointerTo(...pattern)];
    if (field?.kind === 'number' && (typeof value === 'number' || value === null)) {
      found.push({ pointer: pointerTo(...steps), field, now: value });
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, held] of Object.entries(value)) {
        walk(held, [...steps, key], [...pattern, Array.isArray(value) ? '*' : key]);
      }
    }
  };
  walk(part, [], from);
  return found;
}

/** Whether a number may stand there by its own range. */
export function rangeFault({ field }: Input, value: number, at: string): Fault | null {
  const fits = value >= field.min && value <= field.max && (!field.whole || Number.isInteger(value));
  return fits ? null : { pointer: at, message: `expected ${expectation(field, value)}, got ${got(value)}` };
}

/** The layout, or the project, with some numbers and rules set, not checked. What is not touched is shared. Keys of fields need no unescaping. */
export const withEdits = <Of extends Layout | Project>(of: Of, edits: readonly Change[]): Of =>
  edits.reduce((done, { pointer, value }) => changedAt(done, stepsOf(pointer), () => value), of);

const stepsOf = (pointer: string): string[] => pointer.slice(1).split('/');

/** The project with some numbers and rules set, of it or of one of its layouts, checked as a file is; the faults have pointers from the project. */
export function edited(project: Project, layout: Layout, edits: readonly Change[]): Result<Edited> {
  const index = project.layouts.indexOf(layout);
  const isShared = ({ pointer }: Change): boolean => Object.hasOwn(project, stepsOf(pointer)[0] ?? '');
  const own = edits.filter((edit) => !isShared(edit));
  const changedProject = withEdits(project, edits.filter(isShared));
  const checked = checkProject({ ...changedProject, layouts: project.layouts.with(index, withEdits(layout, own)) });
  if (!checked.ok) return checked;
  const changed = checked.value.layouts[index];
  if (!changed) throw new Error('the layout is not one of the project');
  return success({ project: checked.value, layout: changed });
}

/** The same number of the other loudspeaker, and what mirrors its value; null for a number that no loudspeaker has of its own. */
export function mirrored({ pointer, value }: Edit): Edit | null {
  const [, side, axis] = /^\/placement\/(left|right)\/([xy])$/.exec(pointer) ?? [];
  if (side === undefined) return null;
  return { pointer: `/placement/${side === 'left' ? 'right' : 'left'}/${axis}`, value: axis === 'x' ? -value : value };
}
