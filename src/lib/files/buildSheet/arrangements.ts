import { arrangementView } from '$lib/drawing/arrangementView.ts';
import { alikeSheets } from '$lib/workshop/nesting/alikeSheets.ts';
import { drawing, type Block } from './block.ts';
import type { Subject } from './subject.ts';

/** How the parts lie on each sheet, alike ones drawn once, with a legend of the parts under it. */
export const arrangements = ({ plan, sheets }: Subject): readonly Block[] =>
  alikeSheets(sheets).map(({ sheet, numbers }) => {
    const legend = [...new Set(sheet.placements.map(({ part }) => part))].sort();
    const times = numbers.length > 1 ? `Cut ${numbers.length} of it. ` : '';
    const parts = legend.map((name, i) => `${i + 1} ${name}`).join(', ');
    return drawing(arrangementView(sheet, plan.parts, legend), `${times}${parts}.`);
  });
