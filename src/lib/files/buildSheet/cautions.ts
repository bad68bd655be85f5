import type { Plan } from '$lib/solution/document.ts';
import { lengthWithUnit } from '$lib/project/lengthText.ts';
import { MM_PER_INCH, type LengthDisplay } from '$lib/project/units.ts';
import { list, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** One thing that can hurt: what it is about, and what to heed, in whole sentences. */
export interface Caution {
  readonly about: string;
  readonly text: string;
}

/** Comes after the cautions, wherever they stand. */
export const CAUTIONS_CLOSE = 'The manual of your machine and the rules where you live come before anything said here.';

/** What decides on the cautions. */
type Made = Pick<Plan, 'project' | 'parts' | 'stand'>;

/** What can hurt, where it matters to this build, for page and paper alike. */
export const cautionsOf = (of: Made): readonly Caution[] => [
  ...(of.parts.length > 0 && of.project.shop.router.bit === null ? CUTTING : []),
  ...(isRouted(of) ? ROUTING : []),
  ...sawing(of, of.project.display),
  ...printing(of),
  ...(of.parts.length > 0 ? [SCRAP] : []),
  ...ALWAYS,
];

export const cautions = (subject: Subject): Section => ({
  id: 'cautions',
  title: 'Cautions',
  blocks: [list(cautionsOf(subject.plan).map(({ about, text: words }) => `${about}: ${words}`)), text(CAUTIONS_CLOSE)],
});

/** Sheets that are cut by a router's bit, or a block with something to mill. */
const isRouted = ({ parts, stand, project: { shop } }: Made): boolean =>
  (parts.length > 0 && shop.router.bit !== null) ||
  [...stand.left.steps, ...stand.right.steps].some(({ act }) => act === 'mill');

const CUTTING: readonly Caution[] = [
  {
    about: 'Laser',
    text: 'read its manual first. Never leave it running unattended; keep the means to put out a fire within reach.',
  },
  { about: 'Laser', text: 'never cut PVC or anything that may contain it: its fumes are corrosive and poisonous.' },
  { about: 'Laser', text: 'smoke of MDF and plywood contains formaldehyde: extract it outdoors.' },
];

const ROUTING: readonly Caution[] = [
  {
    about: 'Router',
    text: 'read its manual first. Clamp the work down and keep clamps and screws out of the bit’s way; protect eyes, ears and lungs; touch a part only when the bit stands still.',
  },
  {
    about: 'Router',
    text: 'several shallow passes, never the whole depth at once, as the bit’s maker says. On a router table feed against the rotation, and never trap work between bit and fence.',
  },
];

/** What two makers' manuals (12 in and 6 in) and the UK HSE (450 mm and 300 mm) say; rounded to the safe side in the other unit. mm. */
const SAFE = {
  mm: { short: 305, narrow: 153, stick: 450, last: 300 },
  in: { short: 12 * MM_PER_INCH, narrow: 6 * MM_PER_INCH, stick: 18 * MM_PER_INCH, last: 12 * MM_PER_INCH },
} as const;

function sawRules(display: LengthDisplay): readonly Caution[] {
  const { short, narrow, stick, last } = SAFE[display.length];
  const say = (mm: number): string => lengthWithUnit(mm, display);
  return [
    {
      about: 'Saw',
      text: `read its manual first. Guard and riving knife stay on. Never feed a piece under ${say(short)} long or ${say(narrow)} wide by hand along the fence: clamp it in a sled or holder that keeps both hands away from the blade, and never stand it on a narrow end (two makers’ manuals).`,
    },
    {
      about: 'Saw',
      text: `a push stick at least ${say(stick)} long for the last ${say(last)} of every cut; wedges and small pieces in a jig; the waste free to fall on the far side of the blade, and taken away only when it stands still (UK HSE, circular saw benches, and its sheets WIS16 and WIS31).`,
    },
  ];
}

/** A blank is crosscut from a longer board on a saw also where its slope is cut by hand. */
function sawing({ stand }: Made, display: LengthDisplay): readonly Caution[] {
  const cuts = [...stand.left.blocks, ...stand.right.blocks].flatMap((block) => block.cuts);
  return [...(cuts.length > 0 ? sawRules(display) : []), ...(cuts.some(({ tool }) => tool === 'hand') ? [CHISEL] : [])];
}

const CHISEL: Caution = {
  about: 'Chisel and plane',
  text: 'keep them sharp; the block in a vice, both hands behind the edge, and nobody in front of it.',
};

const printing = ({ stand }: Made): readonly Caution[] =>
  stand.left.printed.length + stand.right.printed.length > 0
    ? [{ about: 'Printer', text: 'hot parts burn, and hot plastic gives off fumes: air the room and stay near.' }]
    : [];

const SCRAP: Caution = {
  about: 'First a piece of scrap',
  text: 'measure the board and the kerf before the whole sheet.',
};

const ALWAYS: readonly Caution[] = [
  { about: 'Dust', text: 'sand and machine with extraction, and wear a mask made for fine dust.' },
  { about: 'Glue', text: 'read its label; gloves for epoxy, fresh air for solvents.' },
  {
    about: 'Cabinet',
    text: 'a heavy one on a slope can slide or tip: try it by hand, use a stop or a pad that grips, and keep cables from pulling.',
  },
  { about: 'Loud sound', text: 'it damages hearing: start at low volume.' },
];
