import type { Solution } from '$lib/solution/solution.ts';
import { faultLine, type Result } from '$lib/project/fault.ts';
import { arrange } from '$lib/workshop/nesting/arrange.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import type { Sheet } from '$lib/workshop/part.ts';

/** Sheets laid in rows, in a moment: for tests to which it is all one how the parts lie. */
export const inRows = ({ parts, project }: Solution): Result<readonly Sheet[]> =>
  arrange(parts, project.stock, cutterOf(project));

/** The same where they must be there. */
export function rowsOf(solution: Solution): readonly Sheet[] {
  const laid = inRows(solution);
  if (!laid.ok) throw new Error(laid.faults.map(faultLine).join('; '));
  return laid.value;
}
