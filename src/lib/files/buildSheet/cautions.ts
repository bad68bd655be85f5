import type { Plan } from '$lib/plan/document.ts';
import { list, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** What can hurt, where it matters to this build. The machine’s manual and local rules come first. */
export const cautions = ({ plan }: Subject): Section => ({
  id: 'cautions',
  title: 'Cautions',
  blocks: [
    list([...(plan.parts.length > 0 ? cutting : []), ...sawing(plan), ...printing(plan), ...always]),
    text('The manual of your machine and the rules where you live come before anything said here.'),
  ],
});

const cutting = [
  'Laser: never leave it running unattended; keep the means to put out a fire within reach.',
  'Never cut PVC or anything that may hold it: its fumes are corrosive and poisonous.',
  'MDF: its smoke holds formaldehyde. Cut with extraction, outwards.',
];

const sawing = ({ stand }: Plan): readonly string[] =>
  stand.left.blocks.length + stand.right.blocks.length > 0
    ? [
        'Saw: a short block on a tilted blade can jam and be thrown. Use the guard, a push block and a longer blank where you can.',
      ]
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
