import type { SideName } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { angleText, lengthText } from './formatNumber.ts';

export interface TitleCell {
  readonly name: string;
  readonly text: string;
  /** Whether a narrow sheet goes without it. */
  readonly minor: boolean;
}

/** The cells of the title block: whose drawing it is, and the numbers that one aims for. */
export function titleCells(solution: Plan, side: SideName): readonly TitleCell[] {
  const { project, layout, triangle, sides } = solution;
  const { toe, tilt, lift, miss } = sides[side];
  const unit = project.display;
  const cell = (name: string, text: string, minor = false): TitleCell => ({ name, text, minor });
  return [
    cell('Project', project.title, true),
    cell('Layout', layout.name, true),
    cell('Toe', angleText(toe)),
    cell('Tilt', angleText(tilt)),
    cell('Lift', lengthText(lift, unit)),
    cell('Angle', angleText(triangle.angle)),
    cell('Axis misses by', lengthText(miss, unit), true),
  ];
}
