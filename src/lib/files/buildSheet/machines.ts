import { angleText } from '$lib/project/lengthText.ts';
import { printerOf } from '$lib/project/printer.ts';
import { MM_PER_INCH } from '$lib/project/units.ts';
import type { Block as SolidBlock, Printed } from '$lib/stand/body.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { SET_UP_LENGTH } from '$lib/stand/saw.ts';
import { list, table, text, type Block, type Section } from './block.ts';
import { lengthsOf, toldStands, type Subject } from './subject.ts';

/** How the machines are set, in general terms: saw, printer, cutter; none of it replaces the machine’s manual. */
export function machines(subject: Subject): Section {
  const { plan } = subject;
  const told = toldStands(plan);
  return {
    id: 'machines',
    title: 'Machine settings',
    blocks: [
      ...told.flatMap(({ who, stand }) => stand.blocks.flatMap((block) => sawing(subject, who, block))),
      ...told.flatMap(({ who, stand }) => (stand.printed.length > 0 ? printing(subject, who, stand.printed) : [])),
      ...(plan.parts.length > 0 ? [cutter(subject)] : []),
      text('These are general terms. The manual of your machine and the maker of your material know better.'),
    ],
  };
}

/** Lengths of sine bars in common use: 100 mm and 5 in (common practice, no source). mm. */
const SET_UP = { mm: 100, in: 5 * MM_PER_INCH } as const;

function sawing({ project }: Subject, who: string, { name, blank, cuts }: SolidBlock): readonly Block[] {
  const { bare, full, fine, unit } = lengthsOf(project);
  const bar = SET_UP[project.display.length];
  const size = `${full(blank.length)} from front to rear, ${full(blank.width)} across, ${full(blank.height)} high`;
  const sawn = cuts.filter(({ tool }) => tool !== 'hand');
  return [
    text(`${who}, ${name}: square up a blank of ${size}.`),
    ...(sawn.length > 0
      ? [
          table(
            `${who}, ${name}: the saw, ${unit} and degrees`,
            ['Cut', 'Saw', 'Carriage', 'Tilt', 'Depth', `Carriage on ${full(bar)}`, `Tilt, sine bar ${full(bar)}`],
            sawn.map(({ makes, tool, mitre, bevel, depth, mitreSetUp, bevelSetUp }) => [
              makes,
              tool,
              angleText(mitre),
              angleText(bevel),
              bare(depth),
              fine((mitreSetUp.angleBlock * bar) / SET_UP_LENGTH),
              fine((bevelSetUp.sineBar * bar) / SET_UP_LENGTH),
            ]),
            `Carriage: the angle between the block’s base and the line of cut, and its rise over ${full(bar)}. Sine bar: lift one end of a bar ${full(bar)} long by so much.`,
          ),
        ]
      : []),
  ];
}

function printing({ project }: Subject, who: string, printed: readonly Printed[]): readonly Block[] {
  const { bare, unit } = lengthsOf(project);
  const { fill } = printerOf(project);
  return [
    table(
      `${who}: to print, ${unit} and g`,
      ['Body', 'Quantity', 'Along', 'Across', 'High', 'Mass'],
      printed.map(({ name, quantity, size, mass }) => [
        name,
        String(quantity),
        bare(size.x),
        bare(size.y),
        bare(size.z),
        (mass * 1000).toFixed(0),
      ]),
      `Masses reckoned with ${Math.round(fill * 100)} % of the volume filled.`,
    ),
    list([
      'Lay it down as the file has it: on its side, no supports needed.',
      ...(printed.some(({ roof }) => roof) ? ['Its top leans to a side: print each stand from files of its own.'] : []),
      'Three walls or more, so that rod holes keep their size; ream the holes to the rod.',
      'Let it cool on the bed: a warped core makes a rocking stand.',
    ]),
  ];
}

function cutter({ project }: Subject): Block {
  const { fine, unit } = lengthsOf(project);
  const { stock, shop } = project;
  const cutter = cutterOf(project);
  const { bit, tab } = shop.router;
  return list(
    [
      `Kerf that the sheet files take into account, ${unit}: ${stock.map(({ name, kerf }) => `${name} ${fine(kerf ?? cutter.kerf)}`).join(', ')}.`,
      'Cut the coupon from each board first and measure it.',
      'Engraving first, then insides, then outsides: a part that has come loose can no longer be cut true.',
      ...(bit === null
        ? []
        : [`Router: the bit’s diameter, ${fine(bit)}, is the kerf of every board that names none.`]),
      ...(bit === null || tab === null
        ? []
        : [
            `Holding tabs ${fine(tab.width)} wide and ${fine(tab.height)} high: set them in the machine’s program, on straight edges, three or more to a part; saw or chisel them off and pare the edge flush.`,
          ]),
    ],
    'Cutter',
  );
}
