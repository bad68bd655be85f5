import { glueUpOf, type GlueUp } from '$lib/solution/glueUp.ts';
import { GLUE_LINE_MOST } from '$lib/project/glueLine.ts';
import { list, text, type Block, type Section } from './block.ts';
import { alikeOnce, lengthsOf, toldStands, type Subject, type Told } from './subject.ts';

/** How each stand is glued up across its width; nothing where none is. */
export function glueUp(subject: Subject): readonly Section[] {
  const told = toldStands(subject.plan).flatMap(({ stand, ...rest }) => {
    const up = glueUpOf(stand, subject.plan.project, subject.plan.parts);
    return up ? [{ ...rest, stand, up }] : [];
  });
  if (told.length === 0) return [];
  return [
    {
      id: 'glue-up',
      title: 'Glue-up',
      blocks: [
        text(
          'The label of your glue comes before anything said here: its open time, its clamp time, the least warmth it sets in. All figures without a source are rules of thumb.',
        ),
        ...alikeOnce(
          told.map((one) => ({ who: one.who, of: howTo(subject, one) })),
          ({ who, of }) => [list(of, who)],
        ),
        measuring(subject),
      ],
    },
  ];
}

function howTo({ plan: { project } }: Subject, { stand, up }: Told & { readonly up: GlueUp }): readonly string[] {
  const { full } = lengthsOf(project);
  const { subStacks, caul, clamps } = up;
  return [
    subStacksText(up, full),
    ...(subStacks.length > 1 ? ['Glue the sub-stacks together last, in their order, again within the open time.'] : []),
    ...(stand.rods.length > 0 ? [rodText(up)] : []),
    `Cauls: a flat board on each side, ${full(caul.length)} by ${full(caul.height)} or larger and at least ${full(caul.thickness)} thick, covered with packing tape. No home workshop brings the pressure of the tables onto a whole side: even contact is what counts.`,
    `Clamps: ${clamps.needed} for one glue-up, ${clamps.along} along the stand${clamps.rows > 1 ? ` in ${clamps.rows} rows` : ''}, opening at least ${full(up.opening.needed)}. ${[clampsText(up), openingText(up, full)].filter(Boolean).join(' ')}`,
    up.clamp === null
      ? 'Leave it in the clamps as long as the label says, half an hour to an hour as a rule; saw, sand and load it a day later.'
      : `Leave it in the clamps for ${up.clamp} min; saw, sand and load it a day later.`,
  ];
}

function subStacksText({ subStacks, open, opening, limit }: GlueUp, full: (mm: number) => string): string {
  const time = open.known
    ? `the open time of ${open.minutes} min`
    : `${open.minutes} min, the open time of a quick glue`;
  const [most = 0] = subStacks;
  const least = subStacks.at(-1) ?? most;
  if (subStacks.length === 1) return `All ${most} layers can be spread within ${time}: glue them up at once.`;
  const sizes = least === most ? `${most}` : `${least} or ${most}`;
  return `Glue ${subStacks.length} sub-stacks of ${sizes} layers first: ${limit === 'opening' ? `no more go with their cauls between clamps that open to ${full(opening.have ?? 0)}` : `no more can be spread within ${time}`}. From one side to the other: ${subStacks.join(', ')} layers.`;
}

const rodText = ({ subStacks }: GlueUp): string =>
  subStacks.length > 1
    ? 'Rods: line up each sub-stack on dry, waxed rods and draw them out while the glue is still wet. The rods that stay go in when the sub-stacks are joined: through the first one before its glue is spread, then each next sub-stack is pushed onto them within the open time; glue that sets in the holes keeps a rod out.'
    : 'Rods: stand them in the first layer and push each next one onto them as it is spread; they go in only as long as the glue is wet, for what sets in the holes keeps a rod out.';

function clampsText({ clamps: { needed, have }, subStacks, atOnce }: GlueUp): string {
  if (have === null) return 'How many you have is not known: see “Machines and glue”.';
  if (have < needed) return `You have ${have}: press the rest with weights, or borrow ${needed - have}.`;
  if (subStacks.length === 1 || atOnce === 1) return `You have ${have}: one sub-stack after the other.`;
  return `You have ${have}: ${Math.min(atOnce, subStacks.length)} sub-stacks can stand in clamps at the same time.`;
}

/** What to do where the clamps do not reach across the whole stand. */
function openingText({ opening: { have, needed }, subStacks }: GlueUp, full: (mm: number) => string): string {
  if (have === null || have >= needed) return '';
  const what = subStacks.length > 1 ? 'To join the sub-stacks' : 'Yours';
  const short = subStacks.length > 1 ? `yours open too little, to ${full(have)}` : `open too little, to ${full(have)}`;
  return `${what} ${short}: borrow longer ones, or press the stack standing on its side under weights.`;
}

function measuring({ plan: { project, stand } }: Subject): Block {
  const { fineFull: fine } = lengthsOf(project);
  const { line } = project.shop.glue;
  const spread = stand.right.widthSpread;
  return list(
    [
      line === null
        ? `Glue line: not measured, so from ${fine(0)} to ${fine(GLUE_LINE_MOST)} each${spread ? `; ${spread.joints} of them in each stand` : ''}. Glue and clamp a pack of ten as you will the stand, measure it, take ten thicknesses off and divide by nine: that is the line to type in under “Machines and glue”.`
        : `Glue line: ${fine(line)} each, as measured.`,
      'The slope does not change with the glue line, the width does.',
    ],
    'The glue line',
  );
}
