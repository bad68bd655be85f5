import type { Plan } from '$lib/plan/document.ts';
import { lengthWithUnit } from '$lib/project/lengthText.ts';
import type { Project } from '$lib/project/project.ts';
import { MM_PER_INCH, type LengthDisplay } from '$lib/project/units.ts';
import { list, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** What can hurt, where it matters to this build. The machine’s manual and local rules come first. */
export const cautions = ({ plan, project }: Subject): Section => ({
  id: 'cautions',
  title: 'Cautions',
  blocks: [
    list([
      ...(plan.parts.length > 0 && project.shop.router.bit === null ? CUTTING : []),
      ...(isRouted(plan, project) ? ROUTING : []),
      ...sawing(plan, project.display),
      ...printing(plan),
      ...always,
    ]),
    text('The manual of your machine and the rules where you live come before anything said here.'),
  ],
});

/** Sheets that are cut by a router's bit, or a block with something to mill. */
const isRouted = ({ parts, stand }: Plan, { shop }: Project): boolean =>
  (parts.length > 0 && shop.router.bit !== null) ||
  [...stand.left.steps, ...stand.right.steps].some(({ act }) => act === 'mill');

const CUTTING = [
  'Laser: read its manual first. Never leave it running unattended; keep the means to put out a fire within reach.',
  'Laser: never cut PVC or anything that may contain it: its fumes are corrosive and poisonous.',
  'Laser: smoke of MDF and plywood contains formaldehyde: extract it outdoors.',
];

const ROUTING = [
  'Router: read its manual first. Clamp the work down and keep clamps and screws out of the bit’s way; protect eyes, ears and lungs; touch a part only when the bit stands still.',
  'Router: several shallow passes, never the whole depth at once, as the bit’s maker says. On a router table feed against the rotation, and never trap work between bit and fence.',
];

/** What two makers' manuals (12 in and 6 in) and the UK HSE (450 mm and 300 mm) say; rounded to the safe side in the other unit. mm. */
const SAFE = {
  mm: { short: 305, narrow: 153, stick: 450, last: 300 },
  in: { short: 12 * MM_PER_INCH, narrow: 6 * MM_PER_INCH, stick: 18 * MM_PER_INCH, last: 12 * MM_PER_INCH },
} as const;

function sawRules(display: LengthDisplay): readonly string[] {
  const { short, narrow, stick, last } = SAFE[display.length];
  const say = (mm: number): string => lengthWithUnit(mm, display);
  return [
    `Saw: read its manual first. Guard and riving knife stay on. Never feed a piece under ${say(short)} long or ${say(narrow)} wide by hand along the fence: clamp it in a sled or holder that keeps both hands away from the blade, and never stand it on a narrow end (two makers’ manuals).`,
    `Saw: a push stick at least ${say(stick)} long for the last ${say(last)} of every cut; wedges and small pieces in a jig; the waste free to fall on the far side of the blade, and taken away only when it stands still (UK HSE, circular saw benches, and its sheets WIS16 and WIS31).`,
  ];
}

const sawing = ({ stand }: Plan, display: LengthDisplay): readonly string[] =>
  [...stand.left.blocks, ...stand.right.blocks].some(({ cuts }) => cuts.length > 0) ? sawRules(display) : [];

const printing = ({ stand }: Plan): readonly string[] =>
  stand.left.printed.length + stand.right.printed.length > 0
    ? ['Printer: hot parts burn, and hot plastic gives off fumes: air the room and stay near.']
    : [];

const always = [
  'Dust: sand and machine with extraction, and wear a mask made for fine dust.',
  'Glue: read its label; gloves for epoxy, fresh air for solvents.',
  'A heavy cabinet on a slope can slide or tip: try it by hand, use a stop or a pad that grips, and keep cables from pulling.',
  'Loud sound damages hearing: start at low volume.',
];
