import { cabinetSeat, liesOnStop, type SeatEnd } from '$lib/plan/cabinetSeat.ts';
import { planGauges } from '$lib/plan/gauges.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/pieceLabel.ts';
import { list, text, type Block, type Section } from './block.ts';
import { shapeBlocks } from './partBlocks.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** The gauges, how they are used, and where the cabinet goes on the checked stand. */
export function checking(subject: Subject): Section {
  const gauges = planGauges(subject.plan, subject.layout.stand);
  const has = (stem: string): boolean => gauges.some(({ name }) => name.startsWith(stem));
  const uses = [
    ...(has('wedge-gauge')
      ? [
          'Wedge gauge: against the side of the stand, its left end flush with the front of the base. Its top must be flush with the edge of the wood all along.',
        ]
      : ['The stand’s edges have no gauge: they are too high over the desk. Check their slopes with a digital one.']),
    ...(has('wedge-gauge-inboard')
      ? ['The inboard side is higher or lower than the outboard one: each has its gauge.']
      : []),
    ...(has('front-gauge')
      ? [
          'Front gauge: against the front of the stand, its left end flush with the inboard side; for a stand whose inboard side is on the right, turned over.',
        ]
      : []),
    ...(has('baffle-gauge')
      ? [
          'Baffle gauge: on the desk before the baffle and square to it, clear of the drivers, grille off. The edge of its head must lie on the baffle without light between.',
        ]
      : [
          'The baffle has no gauge: too steep, too high over the desk, or no room before it. Check it with a digital one.',
        ]),
  ];
  return {
    id: 'checking',
    title: 'Checking the stands',
    blocks: [
      text(
        'Cut the gauges from any flat board or card, along their lines. Stand them on the desk, upright. Check the stand on its feet, before a pad or a cabinet is on it.',
      ),
      list(uses),
      ...gauges.flatMap((gauge) => shapeBlocks(subject.project, gauge, gaugeTitle(gauge.name), lettered(gauge))),
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

/** Where each cabinet's front bottom edge lies; told once where both stands agree. */
function seat({ project, layout, plan }: Subject): readonly Block[] {
  const { full } = lengthsOf(project);
  const [left, right] = sideNames.map((side) => {
    if (liesOnStop(plan, side, layout.stand)) return 'the edge lies against the stop all along.';
    const ends = cabinetSeat(plan, side, layout.stand);
    return ends.length > 0
      ? `the line meets ${ends.map((end) => metAt(end, full)).join(' and ')}. The cabinet’s front corners lie ${ends.map((end) => cornerAt(end, full)).join(' and ')}.`
      : 'the cabinet’s front edge lies before the wood: set it by the marks on the desk.';
  });
  const stands = left === right ? [`Both stands: ${left}`] : [`Left stand: ${left}`, `Right stand: ${right}`];
  return [
    list(
      [
        'Draw the line of the cabinet’s front bottom edge on the top of the wood; lengths are measured along the top’s edges and along the line.',
        ...stands,
      ],
      'Setting the cabinet',
    ),
  ];
}

/** Less than this, mm, nobody sees. */
const FLUSH = 0.05;

const metAt = ({ end, edge, fromCorner }: SeatEnd, full: (mm: number) => string): string =>
  fromCorner < FLUSH
    ? `the top’s front ${end} corner`
    : edge === 'side'
      ? `the ${end} side’s edge ${full(fromCorner)} behind the top’s front corner`
      : `the front edge ${full(fromCorner)} from its ${end} corner`;

const cornerAt = ({ end, beyond }: SeatEnd, full: (mm: number) => string): string =>
  Math.abs(beyond) < FLUSH
    ? `on the edge at the ${end} end`
    : `${full(Math.abs(beyond))} ${beyond < 0 ? 'inside' : 'beyond'} the edge at the ${end} end`;
