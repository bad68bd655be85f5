import { frontView } from '$lib/drawing/frontView.ts';
import { isoBody } from '$lib/drawing/isoBody.ts';
import { sidesAlike } from '$lib/drawing/sidesAlike.ts';
import { sideView } from '$lib/drawing/sideView.ts';
import { topView } from '$lib/drawing/topView.ts';
import { sideNames } from '$lib/project/project.ts';
import { drawing, type Section } from './block.ts';
import { takesOf } from '$lib/solution/sheets.ts';
import { partBlocks, solidBlocks } from './partBlocks.ts';
import { printedBlocks } from './printedBlocks.ts';
import { toldStands, type Subject } from './subject.ts';

/** The desk from above and from the side (once for both where they are alike: the left, whose front is in sight), the cabinet from the front, how the stands are made, and each part. */
export function drawings({ plan }: Subject): Section {
  const { project, layout, layoutIndex, parts } = plan;
  const { speaker } = project;
  return {
    id: 'drawings',
    title: 'Drawings',
    blocks: [
      drawing(topView(speaker, layout, layoutIndex, plan)),
      ...(sidesAlike(plan) ? (['left'] as const) : sideNames).map((side) =>
        drawing(sideView(speaker, layout, layoutIndex, plan, side, 'broken')),
      ),
      drawing(frontView(speaker, plan, 'right')),
      ...toldStands(plan).map(({ side }) => drawing(isoBody(plan, side))),
      ...partBlocks(project, parts, takesOf(plan)),
      ...toldStands(plan).flatMap((told) => [
        ...told.stand.printed.flatMap((body) => printedBlocks(project, told, body)),
        ...told.stand.blocks.flatMap((block) => solidBlocks(project, told.who, block)),
      ]),
    ],
  };
}
