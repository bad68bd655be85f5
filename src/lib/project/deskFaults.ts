import { figureFlaw } from '$lib/geometry/figureFlaw.ts';
import { pointWithin } from '$lib/geometry/gapWithin.ts';
import { deskPath } from './deskPath.ts';
import { deskShape } from './deskShape.ts';
import { pointerTo, type Fault } from './fault.ts';
import type { DeskOutline, Layout } from './project.ts';
import { asMm, asTyped, bare, says, type Words } from './sentence.ts';

/** What sizes that fit exactly are made of may miss by, mm. */
const DUST = 1e-6;

/** What is wrong with a desk's sizes among each other. @param index Number of the layout, from 0. */
export function deskFaults({ desk }: Layout, index: number): Fault[] {
  const fault = ({ at, message }: Wrong): Fault => ({
    pointer: pointerTo('layouts', index, 'desk', 'outline', ...at),
    message,
  });
  return wrongIn(desk.outline).map(fault);
}

interface Wrong {
  readonly at: readonly string[];
  readonly message: Words;
}

function wrongIn(outline: DeskOutline): Wrong[] {
  switch (outline.rule) {
    case 'rectangle':
      return tooLong(
        ['corner'],
        outline.corner,
        Math.min(outline.width, outline.depth) / 2,
        'so that two corners fit each edge',
      );
    case 'bowed':
      return [
        ...tooLong(
          ['bow'],
          Math.abs(outline.bow),
          outline.width / 2,
          'to either side, so that the arc is half a circle at most',
        ),
        ...(outline.bow < outline.depth - DUST
          ? []
          : [
              {
                at: ['bow'],
                message: says`expected a bow under the depth, ${asMm(outline.depth)}, got ${bare(asTyped(outline.bow))}`,
              },
            ]),
      ];
    case 'corner':
      return cornerWrong(outline);
    case 'l':
      return tooLong(
        ['return', 'width'],
        outline.return.width,
        outline.width - LEAST_FREE,
        'so that some of the front edge is left',
      );
    case 'outline':
      return freeWrong(outline);
  }
}

/** Of a front edge to sit at, mm. */
const LEAST_FREE = 100;

const tooLong = (at: readonly string[], value: number, most: number, why: string): Wrong[] =>
  value <= most + DUST
    ? []
    : [
        {
          at,
          message: says`expected a length of ${asMm(Math.floor(most * 10) / 10)} at most ${why}, got ${bare(asTyped(value))}`,
        },
      ];

/** The front ends on the front edges of both wings. */
function cornerWrong({ left, right, leftDepth, rightDepth, front }: Extract<DeskOutline, { rule: 'corner' }>): Wrong[] {
  const cut = front * Math.SQRT1_2;
  const short = (at: string, value: number, least: number): Wrong[] =>
    value >= least - DUST
      ? []
      : [
          {
            at: [at],
            message: says`expected a wing of at least ${asMm(Math.ceil(least * 10) / 10)}, the other’s depth and what the front takes of it, got ${bare(asTyped(value))}`,
          },
        ];
  return [...short('left', left, rightDepth + cut), ...short('right', right, leftDepth + cut)];
}

/** How far behind and before the origin it is looked for the desk, mm. */
const STEP = 0.5;

function freeWrong(outline: Extract<DeskOutline, { rule: 'outline' }>): Wrong[] {
  const flaw = figureFlaw(deskPath(outline), [], { path: 0, circle: 0 });
  if (flaw) {
    const [x, y] = flaw.at;
    return [
      {
        at: ['points'],
        message:
          flaw.what === 'crosses itself'
            ? says`expected an outline that neither crosses nor touches itself, got one that does at ${bare(asMm(x))}, ${asMm(y)}`
            : 'expected the corners of an outline that encloses an area, got a line',
      },
    ];
  }
  const shape = deskShape({ outline });
  const onEdge = Math.abs(pointWithin({ ...shape, convex: false }, [0, 0]).gap) <= STEP / 2;
  const behind = pointWithin({ ...shape, convex: false }, [0, STEP]).gap > 0;
  const before = pointWithin({ ...shape, convex: false }, [0, -STEP]).gap < 0;
  return onEdge && behind && before
    ? []
    : [
        {
          at: ['points'],
          message:
            'expected a front edge through x 0, y 0 with the desk behind it, got none: the listener sits straight before that point',
        },
      ];
}
