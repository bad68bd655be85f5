import type { Plan } from '$lib/plan/document.ts';
import { asMm, sentenceText, type Sentence } from '$lib/project/sentence.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { list, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** What can hurt, where it matters to this build. The machine’s manual and local rules come first. */
export const cautions = ({ plan, project }: Subject): Section => ({
  id: 'cautions',
  title: 'Cautions',
  blocks: [
    list([
      ...(plan.parts.length > 0 ? cutting : []),
      ...(plan.parts.length > 0 && project.shop.router.bit !== null ? ROUTING : []),
      ...sawing(plan, project.display),
      ...printing(plan),
      ...always,
    ]),
    text('The manual of your machine and the rules where you live come before anything said here.'),
  ],
});

const cutting = [
  'Laser: never leave it running unattended; keep the means to put out a fire within reach.',
  'Never cut PVC or anything that may hold it: its fumes are corrosive and poisonous.',
  'MDF: its smoke holds formaldehyde. Cut with extraction, outwards.',
];

const ROUTING = [
  'Router: read its manual first. Clamp the sheet down and keep clamps and screws out of the bit’s way; eyes, ears and lungs protected, the bit still before a part is touched.',
  'Router: several shallow passes, never the whole depth at once, as the bit’s maker says. On a router table feed against the rotation, and never trap work between bit and fence.',
];

/** What health and safety authorities say of saw benches and band saws; lengths as they give them. */
const SAWING: readonly Sentence[] = [
  {
    template:
      'Saw: read its manual first. Guard and riving knife stay on. Nothing under {short} long or {narrow} wide is fed by hand against the fence: it is clamped in a sled or holder that keeps both hands away from the blade, and never stands on a narrow end (two makers’ manuals: 12 in and 6 in).',
    quantities: { short: asMm(304.8), narrow: asMm(152.4) },
  },
  {
    template:
      'Saw: a push stick at least {stick} long for the last {last} of every cut; wedges and small pieces in a jig; the waste free to fall on the far side of the blade, taken away when it stands still (UK HSE, circular saw benches, and its sheets WIS16 and WIS31).',
    quantities: { stick: asMm(450), last: asMm(300) },
  },
];

const sawing = ({ stand }: Plan, display: LengthDisplay): readonly string[] =>
  [...stand.left.blocks, ...stand.right.blocks].some(({ cuts }) => cuts.length > 0)
    ? SAWING.map((one) => sentenceText(one, display))
    : [];

const printing = ({ stand }: Plan): readonly string[] =>
  stand.left.printed.length + stand.right.printed.length > 0
    ? ['Printer: hot parts burn, and warm plastic gives off fumes: air the room, stay near.']
    : [];

const always = [
  'Dust: sand with extraction and wear a mask made for fine dust.',
  'Glue: read its label; gloves for epoxy, air for solvents.',
  'A heavy cabinet on a slope can slide or tip: try it by hand, use the stop or a pad that grips, keep cables from pulling.',
  'Loud sound harms hearing: begin low.',
];
