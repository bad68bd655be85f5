import { angleText } from '$lib/project/lengthText.ts';
import { printerOf } from '$lib/project/printer.ts';
import { MM_PER_INCH } from '$lib/project/units.ts';
import type { Block as SolidBlock, Printed } from '$lib/stand/body.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { SET_UP_LENGTH, type SawCut } from '$lib/stand/saw.ts';
import { list, table, text, type Block, type Section } from './block.ts';
import { alikeOnce, lengthsOf, toldStands, type Subject } from './subject.ts';

/** How the machines are set, in general terms: saw, printer, cutter; none of it replaces the machine’s manual. */
export function machines(subject: Subject): Section {
  const { plan } = subject;
  const told = toldStands(plan);
  const settings = [
    ...alikeOnce(
      told.map(({ who, stand }) => ({ who, of: stand.blocks.flatMap(sawnOf) })),
      ({ who, of }) => of.flatMap((block) => sawing(subject, who, block)),
    ),
    ...told.flatMap(({ who, stand }) => (stand.printed.length > 0 ? printing(subject, who, stand.printed) : [])),
    ...(plan.parts.length > 0 ? [cutter(subject)] : []),
  ];
  return {
    id: 'machines',
    title: 'Machine settings',
    blocks: [
      ...(settings.length > 0 ? settings : [text('No machine has to be set: the blocks are cut by hand.')]),
      text('These are general hints: the manual of your machine and the maker of your material come first.'),
    ],
  };
}

/** Lengths of sine bars in common use: 100 mm and 5 in (common practice, no source). mm. */
const SET_UP = { mm: 100, in: 5 * MM_PER_INCH } as const;

/** What a saw is set by. */
type Sawn = Pick<SolidBlock, 'name' | 'blank'> & {
  readonly cuts: readonly Pick<SawCut, 'makes' | 'tool' | 'mitre' | 'bevel' | 'depth' | 'mitreSetUp' | 'bevelSetUp'>[];
};

/** A block with its cuts by machine, but for how it lies in each, which the order of work tells; nothing where there are none. */
function sawnOf({ name, blank, cuts }: SolidBlock): readonly Sawn[] {
  const sawn = cuts
    .filter(({ tool }) => tool !== 'hand')
    .map(({ makes, tool, mitre, bevel, depth, mitreSetUp, bevelSetUp }) => ({
      makes,
      tool,
      mitre,
      bevel,
      depth,
      mitreSetUp,
      bevelSetUp,
    }));
  return sawn.length > 0 ? [{ name, blank, cuts: sawn }] : [];
}

function sawing({ plan: { project } }: Subject, who: string, { name, blank, cuts }: Sawn): readonly Block[] {
  const { bare, full, fine, fineFull, unit } = lengthsOf(project);
  const bar = SET_UP[project.display.length];
  const [length, width, height] = [blank.length, blank.width, blank.height].map(fineFull);
  return [
    text(`${who}, ${name}: from a blank ${length} long from front to rear, ${width} across, ${height} high.`),
    table(
      `${who}, ${name}: the saw, ${unit} and degrees`,
      ['Cut', 'Saw', 'Carriage', 'Tilt', 'Depth', `Carriage on ${full(bar)}`, `Tilt, sine bar ${full(bar)}`],
      cuts.map(({ makes, tool, mitre, bevel, depth, mitreSetUp, bevelSetUp }) => [
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
  ];
}

function printing({ plan: { project, layout } }: Subject, who: string, printed: readonly Printed[]): readonly Block[] {
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
      `Masses are with ${Math.round(fill * 100)} % of the volume filled.`,
    ),
    list([
      'Print each body as it lies in its file, on its side: no supports are needed.',
      ...(printed.some(({ roof }) => roof)
        ? ['The core’s top leans to one side: print each stand from its own files.']
        : []),
      ...(layout.stand.rods
        ? ['Three walls or more, so that rod holes keep their size; ream the holes to the rods.']
        : ['Three walls or more.']),
      'Let it cool on the bed: a warped core makes a rocking stand.',
    ]),
  ];
}

function cutter({ plan: { project, parts } }: Subject): Block {
  const { shop } = project;
  const { fineFull: full } = lengthsOf(project);
  const stock = project.stock.filter(({ name }) => parts.some((part) => part.stock === name));
  const cutter = cutterOf(project);
  const { bit, tab } = shop.router;
  return list(
    [
      `Kerf that the sheet files allow for: ${stock.map(({ name, kerf }) => `${full(kerf ?? cutter.kerf)} in ${name}`).join(', ')}.`,
      'Cut the coupon from each board first, measure it, and correct the kerf.',
      'Engrave first, then cut the insides, then the outsides: a part that has come loose cannot be cut true.',
      ...(bit === null
        ? []
        : [`Router: the bit’s diameter, ${full(bit)}, is the kerf of every board without one of its own.`]),
      ...(bit === null
        ? []
        : [
            `No holding tabs are drawn in the sheet files: set them in the router’s program${tab ? `, ${full(tab.width)} wide and ${full(tab.height)} high` : ''}, on straight edges, three or more to a part. Saw or chisel them off and pare the edge flush.`,
          ]),
    ],
    'Cutter',
  );
}
