import { degrees } from '$lib/geometry/angle.ts';
import { asDegrees, asFineMm, asMm, asTyped, type Quantities } from '$lib/project/sentence.ts';
import type { Workshop } from '$lib/project/project.ts';
import type { Block } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import type { SawCut } from '$lib/stand/saw.ts';
import { step, type Doing, type Step } from '$lib/stand/step.ts';
import { finishSteps } from './finishSteps.ts';

/** A strip to glue on as a stop, and where: from the slope's low edge to its bare side, along the slope, mm. */
export interface StopStrip {
  readonly block: Block;
  readonly from: number;
}

/**
 * Below this nothing is planed or ripped by itself, mm: what planers take at least, common practice, no source; two makers'
 * manuals ask for a push block under 12 in (305 mm) of length and 6 in (152 mm) of width.
 */
const SHORT = 300;

/** How a wedge is made of solid wood, one step each. */
export function solidSteps({ settings, shop }: BuildRequest, block: Block, stop: StopStrip | null): readonly Step[] {
  const { blank, cuts, name } = block;
  const { cable, recess } = settings;
  const inBase = [...(cable ? [SLOT] : []), ...(recess?.face === 'base' ? [RECESS] : [])];
  const opened = {
    ...(cable
      ? { slotWide: asTyped(cable.width), slotDeep: asTyped(cable.depth), slotFrom: asTyped(cable.fromRear) }
      : {}),
    ...(recess?.face === 'base' ? recessSizes(recess) : {}),
  };
  const inSlope = settings.recess?.face === 'top';
  const marked = cuts.length > 0 || inBase.length > 0 || inSlope || settings.corner !== null;
  return [
    step(
      { act: 'square-up', block: name },
      `Square up a blank, grain from front to rear: {long} long, {wide} across, {high} high. ${
        blank.length < SHORT
          ? 'It is too short to be planed or ripped by machine: plane a board longer than {short}, glued up if need be, and crosscut the blank from it.'
          : 'Glue it up from boards if need be.'
      }`,
      {
        long: asFineMm(blank.length),
        wide: asFineMm(blank.width),
        high: asFineMm(blank.height),
        ...(blank.length < SHORT ? { short: asMm(SHORT) } : {}),
      },
    ),
    ...(marked
      ? [
          step(
            { act: 'template', block: name },
            'Write on the blank which end is the front and which side is inboard. Stick the paper templates to its faces with a glue stick, printed side out, base line along the bottom of the blank: each names its stand, its face and what lies at its ends.',
          ),
        ]
      : []),
    ...(inBase.length > 0
      ? [milling(`${inBase.join(' and ')} in the base, while the blank is still square,`, opened)]
      : []),
    ...cuts.flatMap((cut, i) => [
      cutStep({ act: 'saw', block: name, cut: i }, cut, shop.tools),
      ...(cut.makes === 'slope'
        ? [
            step(
              { act: 'plane', block: name },
              'Plane the slope down to the lines of all templates; test it with a straightedge, along and across.',
            ),
          ]
        : []),
    ]),
    ...(recess && inSlope ? [milling(`${RECESS} in the slope`, recessSizes(recess))] : []),
    ...(settings.corner !== null
      ? [step({ act: 'round' }, 'Round the corners to the templates with a plane or a rasp, then abrasive paper.')]
      : []),
    ...(marked
      ? [
          step(
            { act: 'strip', block: name },
            'Peel the templates off and sand the rest of their glue away; write front and inboard on the base.',
          ),
        ]
      : []),
    ...(stop
      ? [
          step(
            { act: 'glue', parts: [stop.block.name] },
            'Make the stop: plane a longer strip to {long} thick and {high} high and cut {wide} off it. Glue it across the slope, square to that, its face to the cabinet {from} from the slope’s low edge.',
            {
              long: asFineMm(stop.block.blank.length),
              high: asFineMm(stop.block.blank.height),
              wide: asFineMm(stop.block.blank.width),
              from: asFineMm(stop.from),
            },
          ),
        ]
      : []),
    ...finishSteps(settings),
  ];
}

/** What is milled right across the block, with its sizes. */
const SLOT =
  'the cable slot ({slotWide} wide, {slotDeep} deep from the base, its middle {slotFrom} from the rear end of the base)';
const RECESS = 'the recess ({recessDeep} deep, {border} of wood left at front and rear)';

const recessSizes = ({ depth, border }: NonNullable<BuildRequest['settings']['recess']>): Quantities => ({
  recessDeep: asTyped(depth),
  border: asTyped(border),
});

const milling = (what: string, sizes: Quantities): Step =>
  step(
    { act: 'mill' },
    `Mill ${what} right across with a router along a clamped fence, the block held so that it cannot shift, in shallow passes.`,
    sizes,
  );

const RULES = 'The saw’s manual first; guard and riving knife stay on; hands on the carriage only.';

function cutStep(doing: Doing, cut: SawCut, tools: Workshop): Step {
  if (cut.makes !== 'slope') return endStep(doing, cut, tools);
  const compound = cut.bevel > 0;
  const quantities = {
    mitre: asDegrees(degrees(cut.mitre)),
    depth: asFineMm(cut.depth),
    ...(cut.leave > 0 ? { leave: asMm(cut.leave) } : {}),
    ...(compound ? { bevel: asDegrees(degrees(cut.bevel)) } : {}),
  };
  const away = cut.held === 'right' ? 'left' : 'right';
  const lies = `lying on its ${cut.down}, ${cut.leads} end first, its base at {mitre} to the line of cut. The work is to the ${cut.held} of the blade; the waste falls free to the ${away}`;
  if (cut.tool === 'table saw') {
    return step(
      doing,
      `Saw the slope on the table saw with the blank clamped in a taper sled, ${lies}.${
        compound ? ` Tilt the blade {bevel} to the ${away}, away from the work.` : ''
      } The cut is {depth} deep; stay {leave} outside the line. ${RULES}`,
      quantities,
    );
  }
  if (cut.tool === 'band saw') {
    return step(
      doing,
      `Saw the slope on the band saw with the blank clamped in a holder that runs along the fence, ${lies}.${
        compound ? ' Tilt the table {bevel}, down to the right.' : ''
      } The cut is {depth} high: set the guides just above it; stay {leave} outside the line. The saw’s manual first; hands on the holder only.`,
      quantities,
    );
  }
  return step(
    doing,
    `Cut the slope by hand, the block in a vice: every {every} saw across the block down to {spare} above the lines, and chisel off the waste between. ${refusal(tools, compound)}`,
    {
      spare: asMm(2),
      every: asMm(20),
      depth: asFineMm(cut.depth),
      ...reach(tools),
      ...(compound ? { bevel: asDegrees(degrees(cut.bevel)), ...tilts(tools) } : {}),
    },
  );
}

/** Why no machine does it, and what would. */
const refusal = ({ bandSaw }: Workshop, compound: boolean): string =>
  `No saw of this workshop makes it: the cut would be {depth} deep${compound ? ' and tilted by {bevel}' : ''}, and the table saw cuts {most}${
    compound ? ', tilted by {tilts} at most' : ''
  }${bandSaw ? `; the band saw cuts {under}${compound ? ', tilted by {tiltsUnder} at most' : ''}` : ''}. A band saw with {depth} under its guides would do, the block in a holder; so would the stacked build, whose layers are cut singly.`;

const tilts = ({ saw, bandSaw }: Workshop) => ({
  tilts: asDegrees(saw.tiltsMost),
  ...(bandSaw ? { tiltsUnder: asDegrees(bandSaw.tiltsMost) } : {}),
});

const reach = ({ saw, bandSaw }: Workshop) => ({
  most: asMm(saw.depth),
  ...(bandSaw ? { under: asMm(bandSaw.height) } : {}),
});

function endStep(doing: Doing, { makes, tool, depth }: SawCut, tools: Workshop): Step {
  const quantities = { depth: asFineMm(depth) };
  if (tool === 'table saw') {
    return step(
      doing,
      `Saw the ${makes} square to the slope in a crosscut sled, the block lying on its slope and clamped, the blade square; the cut is {depth} deep. ${RULES}`,
      quantities,
    );
  }
  if (tool === 'band saw') {
    return step(
      doing,
      `Saw the ${makes} square to the slope on the band saw, the block lying on its slope in a holder, the table square; the cut is {depth} high. The saw’s manual first; hands on the holder only.`,
      quantities,
    );
  }
  return step(
    doing,
    `Saw the ${makes} by hand, outside the line, and plane it square to the slope. The cut is {depth} deep; the table saw cuts {most}${tools.bandSaw ? ', the band saw {under}' : ''}.`,
    { ...quantities, ...reach(tools) },
  );
}
