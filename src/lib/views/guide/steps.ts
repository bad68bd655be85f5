import { pointerTo } from '$lib/project/fault.ts';
import type { DeskOutline, Layout, Project } from '$lib/project/project.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import type { SureKey } from '$lib/project/sure.ts';
import type { Figure } from '$lib/views/figure/figure.ts';
import { boardFigure } from './boardFigure.ts';
import { cabinetFigure } from './cabinetFigure.ts';
import { deskFigure } from './deskFigure.ts';
import { driversFigure } from './driversFigure.ts';
import { marksFigure } from './marksFigure.ts';
import { monitorFigure } from './monitorFigure.ts';
import type { GuideNumbers } from './numbers.ts';
import { seatFigure } from './seatFigure.ts';

/** One step of measuring. */
export interface Step {
  /** Also its address on the page: `#desk`. */
  readonly key: string;
  /** What is measured: `The desk`. */
  readonly title: string;
  /** From where to where, one sentence a line. */
  readonly how: readonly string[];
  /** How well, and why, in the unit that is measured in. */
  readonly well: Readonly<Record<LengthUnit, string>>;
  readonly figure: (numbers: GuideNumbers) => Figure;
  /** The numbers to type, in groups where there are several of a kind. */
  readonly asks: (project: Project, layout: Layout, layoutIndex: number, mirrored: boolean) => readonly Asked[];
  /** What is asked beside numbers, before them: how many screens there are, whether the crossover is known. */
  readonly choice?: 'screens' | 'lying' | 'crossover' | 'symmetry';
}

/** Values to type, and how sure each of them is. */
export interface Asked {
  /** Of several of a kind: which one. */
  readonly name?: string;
  readonly fields: readonly AskedField[];
}

export interface AskedField {
  /** Of a number, or of a name. */
  readonly at: string;
  /** What says how sure it is; absent where that has been asked already, or means nothing. */
  readonly sure?: SureKey;
}

/** What hardly anybody has to enter, and Enter therefore passes by: most drivers lie in the middle, and what radiates is estimated. */
export const isAside = (at: string): boolean => /^\/speaker\/drivers\/\d+\/(?:radiating|offset)$/.test(at);

/** The places under a pointer with what says how sure each is. */
const under = (base: string, fields: readonly (readonly [key: string, sure?: SureKey])[]): readonly AskedField[] =>
  fields.map(([key, sure]) => ({ at: `${base}/${key}`, ...(sure ? { sure } : {}) }));

/** Entries of a list, one group each; what says how sure they are stands with the last. */
function each(
  list: readonly { readonly name: string }[],
  base: string,
  fields: readonly (readonly [key: string, sure?: SureKey])[],
): readonly Asked[] {
  return list.map(({ name }, index) => ({
    name,
    fields: under(
      `${base}${pointerTo(index)}`,
      fields.map(([key, sure]) => (sure && index === list.length - 1 ? [key, sure] : [key])),
    ),
  }));
}

const inBoth = (text: string): Step['well'] => ({ mm: text, in: text });

/** The sizes of a desk by its shape; one drawn corner by corner is entered with the drawing beside it. */
function sizesAsked(rule: DeskOutline['rule']): readonly (readonly [key: string, sure?: SureKey])[] {
  switch (rule) {
    case 'rectangle':
      return [['outline/width', 'deskWidth'], ['outline/depth', 'deskDepth']]; // prettier-ignore
    case 'bowed':
      return [['outline/width', 'deskWidth'], ['outline/depth', 'deskDepth'], ['outline/bow']]; // prettier-ignore
    case 'l':
      return [['outline/width', 'deskWidth'], ['outline/depth', 'deskDepth'], ['outline/return/width'], ['outline/return/length']]; // prettier-ignore
    case 'corner':
      return [['outline/left', 'deskWidth'], ['outline/right'], ['outline/leftDepth', 'deskDepth'], ['outline/rightDepth'], ['outline/front']]; // prettier-ignore
    case 'outline':
      return [];
  }
}

/** The seven steps, in the order in which one walks round the desk with a tape. */
export const steps: readonly Step[] = [
  {
    key: 'desk',
    title: 'The desk',
    how: [
      'Lay the tape along the front edge, then from the front edge to the back.',
      'Height: from the floor to the top face, where the loudspeakers stand.',
      'Gap: from the back edge to the wall. Leave it empty if there is none.',
    ],
    well: {
      mm: 'Two millimetres are enough. Only the height turns the loudspeakers.',
      in: 'A sixteenth of an inch is enough. Only the height turns the loudspeakers.',
    },
    figure: deskFigure,
    asks: (_project, { desk }, index) => [
      {
        fields: under(pointerTo('layouts', index, 'desk'), [
          ...sizesAsked(desk.outline.rule),
          ['height', 'deskHeight'],
        ]).concat({ at: pointerTo('layouts', index, 'room', 'gap'), sure: 'wallGap' }),
      },
    ],
  },
  {
    key: 'seat',
    title: 'Your ears',
    how: [
      'Sit as you listen, not as you sit for a photograph, and let somebody else hold the tape.',
      'Alone: hold a book level against the ear and the tape from the floor to its lower edge.',
      'Then measure level from the desk’s front edge back to the ear, and from the desk’s middle line to your nose.',
    ],
    well: inBoth(
      'Ears move with every breath and with the mood: measure three times on different days if you can, and take the middle one.',
    ),
    figure: seatFigure,
    asks: (_project, _layout, index) => [
      {
        fields: under(pointerTo('layouts', index, 'listener'), [
          ['earHeight', 'earHeight'],
          ['setback', 'setback'],
          ['offset', 'headOffset'],
        ]),
      },
    ],
  },
  {
    key: 'screen',
    title: 'The screen',
    choice: 'screens',
    how: [
      'Say how many stand on the desk: none is an answer too.',
      'Width and height of the panel, without its foot.',
      'Its lower edge over the desk, and its face from the desk’s front edge.',
    ],
    well: {
      mm: 'Five millimetres are enough: it shows only what stands in the way of the sound.',
      in: 'A quarter of an inch is enough: it shows only what stands in the way of the sound.',
    },
    figure: monitorFigure,
    asks: (_project, layout, index) =>
      each(
        layout.monitors.map((_, number) => ({ name: `screen ${number + 1}` })),
        pointerTo('layouts', index, 'monitors'),
        [['width'], ['height'], ['bottom'], ['y'], ['x', 'monitor']],
      ),
  },
  {
    key: 'cabinet',
    title: 'The cabinet',
    how: [
      'Outside, from wood to wood, without feet, knobs and grilles.',
      'Measure it upright, also where it is to lie on its side.',
      'Depth: along the bottom, from the front edge to the back.',
      'Rake: how far the front leans back. Stand the cabinet on a level board and lay a phone’s level on the front.',
    ],
    well: {
      mm: 'One millimetre, for the cabinet rests on what is cut from these numbers.',
      in: 'A thirty-second of an inch, for the cabinet rests on what is cut from these numbers.',
    },
    figure: cabinetFigure,
    choice: 'lying',
    asks: () => [
      {
        fields: under('/speaker', [
          ['width', 'speakerWidth'],
          ['height', 'speakerHeight'],
          ['depth', 'speakerDepth'],
          ['baffleRake', 'baffleRake'],
        ]),
      },
    ],
  },
  {
    key: 'drivers',
    title: 'The drivers',
    how: [
      'Rim diameter: over the whole rim. Radiating diameter: over the dome, or over the cone to the middle of its surround; leave it empty if a grille is in the way, and it is estimated.',
      'Height: from the bottom edge of the front to the rim’s lowest and to its highest point; the centre is half-way.',
      'Offset: from the middle of the front to the centre; towards the other loudspeaker is plus.',
      'Crossover: the frequency at which the drivers meet, from the maker’s data sheet or the builder’s plan.',
    ],
    well: {
      mm: 'One millimetre, above all for the driver that is pointed at you.',
      in: 'A thirty-second of an inch, above all for the driver that is pointed at you.',
    },
    figure: driversFigure,
    choice: 'crossover',
    asks: ({ speaker }) => [
      ...each(speaker.drivers, '/speaker/drivers', [
        ['diameter'],
        ['radiating'],
        ['height', 'driverHeight'],
        ['offset', 'driverOffset'],
      ]),
      ...each(
        speaker.crossovers.map(({ between }) => ({ name: between.join(' and ') })),
        '/speaker/crossovers',
        [['frequency']],
      ),
    ],
  },
  {
    key: 'marks',
    title: 'The marks',
    choice: 'symmetry',
    how: [
      'Put the loudspeakers where they are to stand. The mark is the point on the desk under the middle of the front bottom edge.',
      'Sideways from the desk’s middle line to the mark; then from the desk’s front edge to the mark.',
    ],
    well: {
      mm: 'Two millimetres. Put a strip of tape on each mark: the stands go there.',
      in: 'A sixteenth of an inch. Put a strip of tape on each mark: the stands go there.',
    },
    figure: marksFigure,
    asks: (_project, _layout, index, mirrored) => {
      const placement = pointerTo('layouts', index, 'placement');
      const right = under(`${placement}/right`, [
        ['x', 'markX'],
        ['y', 'markY'],
      ]);
      return mirrored
        ? [{ fields: right }]
        : [
            { name: 'left', fields: under(`${placement}/left`, [['x'], ['y']]) },
            { name: 'right', fields: right },
          ];
    },
  },
  {
    key: 'board',
    title: 'The board',
    how: [
      'Measure the thickness of your own board with a caliper, in three places, and take the middle one: it is seldom what the board was sold as.',
      'The sheet: as large as your machine takes.',
      'Name it as you will find it again. Kerf: the width that your saw, bit or beam takes away; from a test cut, if you have made one.',
    ],
    well: {
      mm: 'A twentieth of a millimetre: fifty slices add it up fifty times.',
      in: 'Two thousandths of an inch: fifty slices add it up fifty times.',
    },
    figure: boardFigure,
    asks: ({ stock }, { stand }) => {
      const index = Math.max(
        0,
        stock.findIndex(({ name }) => name === stand.stock),
      );
      return [
        {
          fields: [
            ...under(pointerTo('stock', index), [
              ['name'],
              ['thickness', 'thickness'],
              ['sheet/width'],
              ['sheet/height'],
            ]),
            { at: '/cutter/kerf' },
          ],
        },
      ];
    },
  },
];
