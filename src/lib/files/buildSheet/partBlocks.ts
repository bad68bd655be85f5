import { isDimensioned, slopeOf, slotWidths } from '$lib/drawing/partDimensions.ts';
import { setOut, type SetOut } from '$lib/drawing/partPoints.ts';
import { partView } from '$lib/drawing/partView.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { angleText } from '$lib/project/lengthText.ts';
import type { Project, StandSettings } from '$lib/project/project.ts';
import type { Block as SolidBlock } from '$lib/stand/body.ts';
import type { Part } from '$lib/workshop/part.ts';
import { drawing, table, type Block } from './block.ts';
import { lengthsOf } from './subject.ts';

/** What is drawn of a part. */
type Shape = Pick<Part, 'outside' | 'inside' | 'mark'>;

/** A part as it can be made from paper alone: its drawing and, where that cannot hold every size, its points as a table. */
export function partBlocks(project: Project, part: Part): readonly Block[] {
  const { fine, unit } = lengthsOf(project);
  const { name, stock, thickness, quantity, labels } = part;
  const front = labels === 'front and name' ? ' The front is at the left.' : '';
  return shapeBlocks(
    project,
    part,
    `Part ${name}`,
    `${stock}, ${fine(thickness)} ${unit} thick, ${quantity} in all.${front}`,
  );
}

/** The faces of a block of solid wood that its cuts show on, and what is milled into it. */
export function solidBlocks(
  project: Project,
  settings: StandSettings,
  who: string,
  { name, templates, blank }: SolidBlock,
): readonly Block[] {
  const { full } = lengthsOf(project);
  const size = `Of a blank ${full(blank.length)} from front to rear, ${full(blank.width)} across, ${full(blank.height)} high.`;
  return templates.flatMap(({ face, outline }) =>
    shapeBlocks(
      project,
      { outside: outline, inside: [], mark: [] },
      `${who}: ${name}, ${face}`,
      [size, ...(face.includes('side') ? milled(project, settings) : [])].join(' '),
    ),
  );
}

function milled(project: Project, { cable, recess, corner }: StandSettings): readonly string[] {
  const { full } = lengthsOf(project);
  return [
    ...(cable
      ? [
          `Slot across the base: ${full(cable.width)} wide, ${full(cable.depth)} deep, its middle ${full(cable.fromRear)} from the rear end.`,
        ]
      : []),
    ...(recess
      ? [`Recess in the ${recess.face}: ${full(recess.depth)} deep, ${full(recess.border)} from both ends.`]
      : []),
    ...(corner === null ? [] : [`Corners rounded to a radius of ${full(corner)}.`]),
  ];
}

/** @param about What else is to be known of it: whole sentences, or nothing. */
export function shapeBlocks(project: Project, part: Shape, title: string, about: string): readonly Block[] {
  const { unit } = lengthsOf(project);
  const dimensioned = isDimensioned(part);
  const note = [about, ...(dimensioned ? holes(project, part) : []), slots(project, part), slope(part)]
    .filter((words) => words !== '')
    .join(' ');
  return [
    drawing(partView(title, part), note === '' ? null : note),
    ...(dimensioned
      ? []
      : [
          table(
            `${title}: its points, ${unit}`,
            ['Point', 'from the left', 'from below', 'Radius or ⌀'],
            setOut(part).map((point) => pointRow(project, point)),
            'Numbers run round the outline, counter-clockwise from the lowest left corner; A, B… are holes, their corners counted likewise. A rounded corner is given where its edges, drawn out, meet. Lengths are from the furthest left of those corners and from the lowest.',
          ),
        ]),
  ];
}

function holes(project: Project, { inside }: Shape): readonly string[] {
  const [first] = inside;
  if (first?.kind !== 'circle') return [];
  const size = lengthsOf(project).fine(2 * first.radius);
  return [`${inside.length === 1 ? '1 hole' : `${inside.length} holes`} ⌀${size}.`];
}

/** Widths of the slots in its outline, to a hundredth of a millimetre: what goes in has to fit. */
function slots(project: Project, { outside }: Shape): string {
  const { fine } = lengthsOf(project);
  const widths = [...new Set(slotWidths(outside).map(fine))];
  return widths.length > 0 ? `Slots ${widths.join(' and ')} wide.` : '';
}

function slope({ outside }: Shape): string {
  const edge = slopeOf(outside);
  if (!edge) return '';
  const { from, to } = edge;
  return `Slope (${angleText(degrees(Math.atan2(Math.abs(to[1] - from[1]), Math.abs(to[0] - from[0]))))}).`;
}

/** To a hundredth of a millimetre: a slot fits by that. */
function pointRow(project: Project, { name, at, diameter, radius }: SetOut): readonly string[] {
  const { fine } = lengthsOf(project);
  // A rounding that prints as nothing is none.
  const size = diameter !== null ? `⌀${fine(diameter)}` : Number(fine(radius)) > 0 ? fine(radius) : '';
  return [name, fine(at[0]), fine(at[1]), size];
}
