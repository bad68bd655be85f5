import { degrees } from '$lib/geometry/angle.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import { MILLIMETRES } from '$lib/project/units.ts';
import type { StandBody } from '$lib/stand/body.ts';
import type { Take } from '$lib/workshop/standParts.ts';
import type { StandPlan } from './document.ts';
import type { WidthSpread } from './widthSpread.ts';

/** One stand of the plan from its body: angles to degrees, and the plan's parts in place of its own pieces. */
export function standPlan(body: StandBody, takes: readonly Take[], spread: WidthSpread | null): StandPlan {
  return {
    ...body,
    widthSpread: spread,
    blocks: body.blocks.map((block) => ({
      ...block,
      cuts: block.cuts.map((cut) => ({ ...cut, mitre: degrees(cut.mitre), bevel: degrees(cut.bevel) })),
    })),
    steps: body.steps.map((step) => ({ ...step, text: sentenceText(step, MILLIMETRES) })),
    part: takes[0]?.part ?? null,
    pieces: takes,
  };
}
