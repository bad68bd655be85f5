import { partFamilies, type Family } from '$lib/drawing/partFamily.ts';
import { isDimensioned, slopeOf, slotWidths } from '$lib/drawing/partDimensions.ts';
import { setOut, type SetOut } from '$lib/drawing/partPoints.ts';
import { partView } from '$lib/drawing/partView.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { angleText } from '$lib/project/lengthText.ts';
import type { Project, SideName } from '$lib/project/project.ts';
import type { Block as SolidBlock } from '$lib/stand/body.ts';
import { cutList, quantityText, type CutListRow } from '$lib/workshop/cutList.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Take } from '$lib/workshop/standParts.ts';
import { drawing, table, type Block } from './block.ts';
import { lengthsOf } from './subject.ts';

/** What is drawn of a part. */
type Shape = Pick<Part, 'outside' | 'inside' | 'mark'>;

/** What each stand takes of the parts. */
type Takes = Readonly<Record<SideName, readonly Take[]>>;

/**
 * Parts as they can be made from paper alone: each has its drawing and, where that cannot hold every size, its points as a
 * table; of parts that differ in a few sizes the first is drawn, and the others have a row each.
 */
export const partBlocks = (project: Project, parts: readonly Part[], takes: Takes): readonly Block[] =>
  partFamilies(parts).flatMap((family) => familyBlocks(project, family, takes));

function familyBlocks(project: Project, { first, others, varies }: Family, takes: Takes): readonly Block[] {
  const { fine, unit } = lengthsOf(project);
  const { name, stock, thickness, labels } = first;
  const counts = cutList([first, ...others], takes, []);
  const front = labels === 'front and name' ? ' The front is at the left.' : '';
  const drawn = shapeBlocks(
    project,
    first,
    `Part ${name}`,
    `${stock}, ${fine(thickness)} ${unit} thick, ${countOf(counts[0])}.${front}`,
    others.length > 0 ? false : isDimensioned(first),
  );
  if (others.length === 0) return drawn;
  return [
    ...drawn,
    table(
      `Parts like ${name}: what differs, ${unit}`,
      [
        'Part',
        'Left',
        'Right',
        'Both',
        ...varies.map(({ point, axis }) => `${point} from ${axis === 0 ? 'the left' : 'below'}`),
      ],
      [first, ...others].map((part, i) => {
        const points = setOut(part);
        const { left = 0, right = 0 } = counts[i] ?? {};
        return [
          part.name,
          ...[left, right, part.quantity].map(String),
          ...varies.map(({ point, axis }) => fine(points.find((one) => one.name === point)?.at[axis] ?? 0)),
        ];
      }),
      `All other points are those of ${name}.`,
    ),
  ];
}

const countOf = (row: CutListRow | undefined): string => (row ? quantityText(row) : '');

/** The faces of a block of solid wood that show its cuts, its slot and its recess. */
export function solidBlocks(project: Project, who: string, { name, templates, blank }: SolidBlock): readonly Block[] {
  const { full } = lengthsOf(project);
  const size = `Of a blank ${full(blank.length)} from front to rear, ${full(blank.width)} across, ${full(blank.height)} high.`;
  return templates.flatMap(({ face, outline, ends: [left, right] }) =>
    shapeBlocks(
      project,
      { outside: outline, inside: [], mark: [] },
      `${who}: ${name}, ${face}`,
      `${size} Seen from outside, ${left} at the left, ${right} at the right.`,
    ),
  );
}

/**
 * @param about What else is to be known of it: whole sentences, or nothing.
 * @param dimensioned Whether its sizes stand on dimension lines; default where those can say all of it.
 */
export function shapeBlocks(
  project: Project,
  part: Shape,
  title: string,
  about: string,
  dimensioned = isDimensioned(part),
): readonly Block[] {
  const { unit } = lengthsOf(project);
  const note = [about, ...(dimensioned ? holes(project, part) : []), slots(project, part), slope(part)]
    .filter((words) => words !== '')
    .join(' ');
  return [
    drawing(partView(title, part, dimensioned), note === '' ? null : note),
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
