import { letterOf } from '$lib/drawing/partPoints.ts';
import type { Circle, Path } from '$lib/geometry/contour.ts';
import type { Project } from '$lib/project/project.ts';
import type { Printed } from '$lib/stand/body.ts';
import { quantityText } from '$lib/workshop/cutList.ts';
import type { Block } from './block.ts';
import { shapeBlocks } from './partBlocks.ts';
import { lengthsOf, type Told } from './subject.ts';

/**
 * A printed body as it lies on the bed, to check it by or to model it anew: one drawing seen from above, or, where its two
 * faces differ, one of each.
 */
export function printedBlocks(project: Project, { who, side }: Told, body: Printed): readonly Block[] {
  const { full } = lengthsOf(project);
  const { name, size, quantity, roof } = body;
  const [outside, holes, pockets] = facesOf(body);
  const count =
    who === 'Each stand'
      ? quantityText({ left: quantity, right: quantity, quantity: 2 * quantity })
      : quantityText({ left: 0, right: 0, [side]: quantity, quantity });
  const about = `Printed lying on its side, ${full(size.z)} high on the bed; ${count}. Seen from above as it lies, the front of the stand at the left.`;
  const draw = (face: string, shape: Path, inside: readonly (Path | Circle)[], more: string) =>
    shapeBlocks(
      project,
      { outside: shape, inside, mark: [] },
      `${who}: printed ${name}${face}`,
      `${about}${more}`,
      // Holes of two kinds are told apart by their letters.
      pockets.length > 0 ? false : undefined,
    );
  const bored = [...holes, ...pockets];
  const deep = pocketText(body, holes.length, pockets.length, full);
  if (!roof) return draw('', outside, bored, deep);
  return [
    ...draw(
      ', face on the bed',
      outside,
      holes,
      ` The upper face differs: straight lines lead from each corner to its own there.`,
    ),
    ...draw(', upper face', roof, bored, `${deep} This face is later on the listener’s right.`),
  ];
}

/** The outline on the bed, the holes that go through, and those in the upper face alone. */
function facesOf({ levels, name }: Printed): readonly [Path, readonly (Path | Circle)[], readonly (Path | Circle)[]] {
  const [outside, ...through] = levels[0]?.contours ?? [];
  if (outside?.kind !== 'path') throw new Error(`${name} has an outline`);
  return [outside, through, (levels.at(-1)?.contours ?? []).slice(through.length + 1)];
}

function pocketText({ levels }: Printed, before: number, count: number, full: (mm: number) => string): string {
  if (count === 0) return '';
  const names = Array.from({ length: count }, (_, i) => letterOf(before + i));
  const last = names.pop() ?? '';
  const all = names.length > 0 ? `${names.join(', ')} and ${last} are pockets` : `${last} is a pocket`;
  const others = before > 0 ? '; the other holes go through' : '';
  return ` ${all} ${full(levels.at(-1)?.height ?? 0)} deep in the upper face${others}.`;
}
