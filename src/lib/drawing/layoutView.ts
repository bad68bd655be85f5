import type { Plan } from '$lib/solution/document.ts';
import { laidOver } from './laidOver.ts';
import { moveDimensions } from './moveDimensions.ts';
import { topView } from './topView.ts';
import type { View } from './view.ts';

/** The only dimension of the top view that is given in the small: what the arrangement is first judged by. */
const GIVEN = 'triangle-angle';

/**
 * A layout from above in the small: what stands where, the axes and the triangle's angle. With another layout laid faintly over
 * it, and how far each thing has moved from where it stands there.
 */
export function layoutView(plan: Plan, over: Plan | null): View {
  const view = bare(plan);
  if (over === null) return view;
  const both = laidOver(view, bare(over));
  return { ...both, items: [...both.items, ...moveDimensions(plan, over)] };
}

function bare(plan: Plan): View {
  const { project, layout, layoutIndex } = plan;
  const view = topView(project.speaker, layout, layoutIndex, plan);
  const items = view.items.filter((item) => {
    if ((item.rank ?? 1) > 1 || item.kind === 'label' || item.kind === 'dimension') return false;
    return item.kind !== 'angle' || item.id === GIVEN;
  });
  return { ...view, items };
}
