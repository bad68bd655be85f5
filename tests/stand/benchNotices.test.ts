import { describe, expect, test } from 'vitest';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import type { Path, Vertex } from '$lib/geometry/contour.ts';
import { mirrored } from '$lib/geometry/mirrored.ts';
import type { StandSettings, Workshop } from '$lib/project/project.ts';
import type { Piece, StandBody } from '$lib/stand/body.ts';
import type { Quantity } from '$lib/project/sentence.ts';
import type { Step } from '$lib/stand/step.ts';
import { examine } from './bench/examine.ts';
import { sawnBlock } from './bench/sawing.ts';
import { volumeOf } from './bench/solid.ts';
import { board, bodyOf, shop, speaker, stance, thick, thin } from './builds/buildRequests.ts';
import { plain } from './stands.ts';

const tools: Workshop = {
  ...COMMON_SHOP,
  saw: { ...COMMON_SHOP.saw, depth: 120 },
  bandSaw: { height: 200, tiltsMost: 30 },
};
const routed: Workshop = { ...tools, router: { bit: 3.175, tab: null } };

const square = { base: 'square-to-desk' } as const;
const cable = { width: 12, depth: 6, fromRear: 38 };
const stop = { height: 12, thickness: 9 };
const recess = { face: 'top', depth: 1.5, border: 8 } as const;
const ribs = { count: 2, cross: 3, fit: 0.1, inset: 10, skin: thin.name };
const skins = { build: 'ribbed', ribs } as const;

const made = (settings: Partial<StandSettings>, workshop = tools): StandBody =>
  bodyOf({ settings, board: settings.build === 'ribbed' ? thick : board, shop: { ...shop, tools: workshop } });

const tryOut = (body: StandBody, settings: Partial<StandSettings>, workshop = tools) =>
  examine(body, { stance, depth: speaker.depth, settings: { ...plain, ...settings }, skin: settings.ribs?.skin ? thin.thickness : 0 }, workshop); // prettier-ignore

type Change = (body: StandBody) => StandBody;

const steps =
  (change: (step: Step) => Step | null): Change =>
  (body) => ({ ...body, steps: body.steps.flatMap((step) => change(step) ?? []) });

const pieces =
  (change: (piece: Piece, index: number) => Piece): Change =>
  (body) => ({ ...body, pieces: body.pieces.map(change) });

const reshaped = (path: Path, change: (vertex: Vertex) => Partial<Vertex>): Path => ({
  ...path,
  vertices: path.vertices.map((one) => ({ ...one, ...change(one) })),
});

const said = (step: Step, name: string, more: number): Step => {
  const quantity: Quantity | undefined = step.quantities[name];
  return quantity ? { ...step, quantities: { ...step.quantities, [name]: { ...quantity, value: quantity.value + more } } } : step; // prettier-ignore
};

const withoutLast = <One>(all: readonly One[]): readonly One[] => all.slice(0, -1);

/** What is asked for, and a body that is not that. */
const wrong: readonly (readonly [string, Partial<StandSettings>, Change])[] = [
  [
    'a layer too few',
    square,
    steps((step) => (step.act === 'stack' ? { ...step, layers: step.layers.slice(1) } : step)),
  ],
  [
    'two layers that change places',
    square,
    steps((step) => {
      const [a, b, ...more] = step.act === 'stack' ? step.layers : [];
      return step.act === 'stack' && a && b ? { ...step, layers: [b, a, ...more] } : step;
    }),
  ],
  [
    'a layer cut a tenth of a millimetre too low',
    square,
    pieces((piece, i) =>
      i === 20 ? { ...piece, outside: reshaped(piece.outside, ({ y }) => ({ y: y > 10 ? y - 0.1 : y })) } : piece,
    ),
  ],
  [
    'a slope a tenth of a degree too steep',
    {},
    pieces((piece) => ({
      ...piece,
      outside: reshaped(piece.outside, ({ x, y }) => ({ y: y > 10 ? y - 0.0017 * x : y })),
    })),
  ],
  [
    'a hole out of line',
    square,
    pieces((piece, i) => ({
      ...piece,
      inside: piece.inside.map((hole) =>
        i === 3 && hole.kind === 'circle' ? { ...hole, centre: [hole.centre[0] + 0.1, hole.centre[1]] } : hole,
      ),
    })),
  ],
  ['a rod too thick', {}, steps((step) => (step.act === 'rod' ? said({ ...step, diameter: 8 }, 'diameter', 2) : step))],
  [
    'a sentence that counts one layer more than there is',
    {},
    steps((step) => (step.act === 'cut' ? said(step, 'layers', 1) : step)),
  ],
  ['a part drawn once less than it is used', {}, pieces((piece) => ({ ...piece, quantity: piece.quantity - 1 }))],
  ['a stop at the other end', { stop }, pieces((piece) => ({ ...piece, outside: mirrored(piece.outside) }))],
  ['a stop a tenth of a millimetre too low', { stop }, () => made({ stop: { ...stop, height: 11.9 } })],
  ['a stop that stands in the cabinet’s place', { stop, rearMargin: 9.1 }, () => made({ stop, rearMargin: 9 })],
  [
    'a slot at the mirrored place',
    { cable },
    () => made({ cable: { ...cable, fromRear: speaker.depth * Math.cos(stance.tilt) - 38 } }),
  ],
  ['a slot a tenth of a millimetre too shallow', { cable }, () => made({ cable: { ...cable, depth: 5.9 } })],
  ['a recess a tenth of a millimetre too deep', { recess }, () => made({ recess: { ...recess, depth: 1.6 } })],
  ['a recess in the wrong face', { recess }, () => made({ recess: { ...recess, face: 'base' } })],
  ['ends square to the slope', {}, () => made({ ends: 'square' })],
  ['a slope that is left unsanded', square, steps((step) => (step.act === 'sand' ? null : step))],
  [
    'a slope sanded to the wrong edges',
    square,
    steps((step) => (step.act === 'sand' ? { ...step, to: step.to === 'inboard' ? 'outboard' : 'inboard' } : step)),
  ],
  [
    'a core printed for the other stand',
    { ...square, build: 'skinned' },
    (body) => ({
      ...body,
      printed: bodyOf({ settings: { ...square, build: 'skinned' }, stance: { side: 'left' } }).printed,
    }),
  ],
  ['windows too near to the slope', { relief: { web: 8, corner: 3 } }, () => made({ relief: { web: 7.9, corner: 3 } })],
  [
    'a core without its windows',
    { build: 'skinned', relief: { web: 8, corner: 3 } },
    (body) => ({
      ...body,
      printed: made({ build: 'skinned' }).printed,
    }),
  ],
  [
    'skins in the wrong order',
    skins,
    steps((step) =>
      step.act === 'glue' && step.parts.length === 2 ? { ...step, parts: [...step.parts].reverse() } : step,
    ),
  ],
  [
    'skins that nobody glues on',
    skins,
    steps((step) => (step.act === 'glue' && step.parts.length === 2 ? null : step)),
  ],
  [
    'a skin a tenth of a millimetre too short',
    skins,
    pieces((piece) =>
      piece.name === 'top-skin'
        ? { ...piece, outside: reshaped(piece.outside, ({ x }) => ({ x: x > 1 ? x - 0.1 : x })) }
        : piece,
    ),
  ],
  [
    'cross ribs that change places',
    { ...square, build: 'ribbed', ribs: { ...ribs, skin: null } },
    steps((step) => (step.act === 'interlock' ? { ...step, crosses: [...step.crosses].reverse() } : step)),
  ],
  [
    'a joint too few',
    { ...skins },
    (body) => ({ ...body, joints: body.joints.map((one) => ({ ...one, count: one.count - 1 })) }),
  ],
  [
    'a blank of another size',
    { build: 'solid' },
    steps((step) => (step.act === 'square-up' ? said(step, 'high', 1) : step)),
  ],
  [
    'a cut left out',
    { build: 'solid', ends: 'square' },
    steps((step) => (step.act === 'saw' && step.cut === 1 ? null : step)),
  ],
  ['a slot that nobody mills', { build: 'solid', cable }, steps((step) => (step.act === 'mill' ? null : step))],
  ['corners that nobody rounds', { build: 'solid', corner: 2 }, steps((step) => (step.act === 'round' ? null : step))],
  [
    'a strip glued a tenth of a millimetre off',
    { build: 'solid', stop },
    steps((step) => (step.act === 'glue' ? said(step, 'from', 0.1) : step)),
  ],
  [
    'templates that change sides',
    { ...square, build: 'solid' },
    (body) => ({
      ...body,
      blocks: body.blocks.map((block) => {
        const [a, b, ...more] = block.templates;
        return a && b
          ? { ...block, templates: [{ ...a, outline: b.outline }, { ...b, outline: a.outline }, ...more] }
          : block;
      }),
    }),
  ],
  [
    'a volume that counts what is sanded off',
    { ...square, build: 'ribbed', ribs: { ...ribs, skin: null } },
    (body) => ({
      ...body,
      volume: body.volume * 1.0001,
    }),
  ],
  [
    'the last part never cut',
    skins,
    steps((step) => (step.act === 'cut' ? { ...step, pieces: withoutLast(step.pieces) } : step)),
  ],
];

describe('the bench notices', () => {
  test.each(wrong)('%s', (_, settings, change) => {
    const body = made(settings);
    tryOut(body, settings);
    expect(() => tryOut(change(body), settings)).toThrow();
  });

  test.each([
    ['a cable slot', { cable }],
    ['the corner at a stop', { stop }],
    ['halving joints', { ...skins }],
  ] as const)('a router’s relief left out: %s', (_, settings) => {
    tryOut(made(settings, routed), settings, routed);
    expect(() => tryOut(made(settings), settings, routed)).toThrow();
  });

  test('a saw set wrongly: the other end first, another side down, half a degree off, a blade too short', () => {
    const solid = made({ ...square, build: 'solid' });
    const [block] = solid.blocks;
    const [cut] = block?.cuts ?? [];
    if (!block || !cut) throw new Error('there is a cut');
    const after = (change: Partial<typeof cut>) => () =>
      expect(volumeOf(sawnBlock({ ...block, cuts: [{ ...cut, ...change }] }, 'right', tools).wedge)).toBeCloseTo(block.volume, 3); // prettier-ignore
    after({})();
    expect(after({ leads: cut.leads === 'front' ? 'rear' : 'front' })).toThrow();
    expect(after({ down: 'inboard side' })).toThrow();
    expect(after({ held: 'left' })).toThrow();
    expect(after({ bevel: cut.bevel + 0.009 })).toThrow();
    expect(after({ mitre: cut.mitre + 0.009 })).toThrow();
    expect(after({ tool: 'table saw' })).toThrow();
  });
});
