import { degrees } from '$lib/geometry/angle.ts';
import type { StandBody } from '$lib/stand/body.ts';
import type { Take } from '$lib/workshop/standParts.ts';
import type { StandPlan } from './document.ts';

/** One stand of the plan from its body: angles to degrees, and the plan's parts in place of its own pieces. */
export function standPlan(body: StandBody, takes: readonly Take[]): StandPlan {
  return {
    ...body,
    blocks: body.blocks.map((block) => ({
      ...block,
      cuts: block.cuts.map((cut) => ({ ...cut, mitre: degrees(cut.mitre), bevel: degrees(cut.bevel) })),
    })),
    part: takes[0]?.part ?? null,
    pieces: takes,
  };
}
