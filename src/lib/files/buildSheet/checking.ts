import { cabinetSeat, liesOnStop, type SeatEnd } from '$lib/solution/cabinetSeat.ts';
import { planGauges } from '$lib/solution/gauges.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { MM_PER_INCH, type LengthDisplay } from '$lib/project/units.ts';
import { asStood } from '$lib/project/stood.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';
import { list, text, type Block, type Section } from './block.ts';
import { shapeBlocks } from './partBlocks.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** The gauges, how they are used, and where the cabinet goes on the checked stand. */
export function checking(subject: Subject): Section {
  const gauges = planGauges(subject.plan, subject.plan.layout.stand);
  const has = (stem: string): boolean => gauges.some(({ name }) => name.startsWith(stem));
  const uses = [
    ...(has('wedge-gauge')
      ? [
          'Wedge gauge: against the side of the stand, its front end flush with the front of the base; turn it over where the front is at the right. Its top must be flush with the edge of the wood all along.',
        ]
      : ['The stand’s edges have no gauge: they are too high above the desk. Check their slopes with a digital one.']),
    ...(has('wedge-gauge-inboard')
      ? ['The inboard and the outboard side differ in height: each has its own gauge.']
      : []),
    ...(has('front-gauge')
      ? [
          'Front gauge: against the front of the stand, its inboard end flush with the inboard side; turn it over where that is at the right.',
        ]
      : []),
    ...(has('baffle-gauge')
      ? [
          'Baffle gauge: on the desk in front of the baffle and square to it, clear of the drivers, grille off. The edge of its head must touch the baffle all along, with no light showing between.',
        ]
      : [
          'The baffle has no gauge: too steep, too high above the desk, or no room in front of it. Check it with a digital one.',
        ]),
  ];
  return {
    id: 'checking',
    title: 'Checking the stands',
    blocks: [
      text(
        'Cut the gauges from any flat board or stiff card, along their lines, and stand them upright on the desk. Check the stand on its feet before a pad or a cabinet is on it, and the baffle when the cabinet is in place.',
      ),
      list(uses),
      ...gauges.flatMap((gauge) => shapeBlocks(subject.plan.project, gauge, gaugeTitle(gauge.name), lettered(gauge))),
      ...seat(subject),
    ],
  };
}

/** What a gauge says of itself, which its drawing is too small for. */
const lettered = (gauge: Part): string =>
  labelsOf(gauge)
    .map(({ text }) => `Lettered “${text}”.`)
    .join(' ');

/** `wedge-gauge-left`: Wedge gauge left. */
const gaugeTitle = (name: string): string => {
  const words = name.replaceAll('-', ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

/** Where each cabinet goes on its stand; told once where both agree. */
function seat(subject: Subject): readonly Block[] {
  const { project, layout } = subject.plan;
  const say = { full: lengthsOf(project).full, flush: flushWithin(project.display) };
  const [left, right] = sideNames.map((side) => seatOf(subject, side, say));
  const stands = left === right ? [`Both stands: ${left}`] : [`Left stand: ${left}`, `Right stand: ${right}`];
  const line = `Draw the line of the cabinet’s front bottom edge on the top of the wood; lengths are measured along the top’s edges and along the line.${
    layout.stand.pad > 0 ? ' Carry its ends down over the edges of the wood: the pad covers the line.' : ''
  }`;
  return [list([...(layout.stand.stop ? [] : [line]), ...stands], 'Setting the cabinet')];
}

/** By its stop, which leaves only the way across; or by the line of its front edge. */
function seatOf({ plan }: Subject, side: SideName, say: Say): string {
  const { project, layout } = plan;
  if (layout.stand.stop) {
    const edge = liesOnStop(plan, side, layout.stand) ? 'front' : 'rear';
    return `the cabinet’s ${edge} edge lies against the stop all along, its sides ${besideOf((asStood(project.speaker).width - plan.stand[side].width) / 2, say)}.`;
  }
  const ends = cabinetSeat(plan, side, layout.stand);
  return ends.length > 0
    ? `the line ${lineOf(ends, say)}. The cabinet’s front corners lie ${cornersOf(ends, say)}.`
    : 'the cabinet’s front edge lies in front of the wood: set it by the marks on the desk.';
}

const besideOf = (beyond: number, { full, flush }: Say): string =>
  Math.abs(beyond) < flush
    ? 'flush with those of the stand'
    : `${full(Math.abs(beyond))} ${beyond < 0 ? 'inside' : 'beyond'} those of the stand, left and right alike`;

/** How lengths are said, and below what, mm, two places are one. */
interface Say {
  readonly full: (mm: number) => string;
  readonly flush: number;
}

/** Nobody sets a cabinet by less than half a millimetre, nor by what the tape’s fractions do not show. mm. */
const flushWithin = ({ length, fraction }: LengthDisplay): number =>
  Math.max(0.5, length === 'in' && fraction !== null ? MM_PER_INCH / (2 * fraction) : 0);

const lineOf = (ends: readonly SeatEnd[], say: Say): string =>
  ends.every(({ fromCorner }) => fromCorner < say.flush)
    ? 'runs along the front edge of the top'
    : `meets ${ends.map((end) => metAt(end, say)).join(' and ')}`;

const metAt = ({ end, edge, fromCorner }: SeatEnd, { full, flush }: Say): string =>
  fromCorner < flush
    ? `the top’s front ${end} corner`
    : edge === 'side'
      ? `the ${end} side’s edge ${full(fromCorner)} behind the top’s front corner`
      : `the front edge ${full(fromCorner)} from its ${end} corner`;

const cornersOf = (ends: readonly SeatEnd[], say: Say): string =>
  ends.every(({ beyond }) => Math.abs(beyond) < say.flush)
    ? 'at its ends'
    : ends.map((end) => cornerAt(end, say)).join(' and ');

const cornerAt = ({ end, beyond }: SeatEnd, { full, flush }: Say): string =>
  Math.abs(beyond) < flush
    ? `on the edge at the ${end} end`
    : `${full(Math.abs(beyond))} ${beyond < 0 ? 'inside' : 'beyond'} the edge at the ${end} end`;
