import fc from 'fast-check';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { faultLine } from '$lib/project/fault.ts';
import { numberFrom } from './numbers.ts';

type Json = { [key: string]: Json } & Json[] & string & number & boolean & null;

const demo = checkProject(demoProject);

/** A deep copy of the demo, defaults written out, with some values set by JSON pointer. Undefined removes a key. */
export function demoWith(changes: Readonly<Record<string, unknown>> = {}): unknown {
  const document: unknown = JSON.parse(JSON.stringify(demo.ok ? demo.value : demoProject));
  for (const [pointer, value] of Object.entries(changes)) {
    const steps = pointer.split('/').slice(1);
    const last = steps.pop() ?? '';
    const holder = steps.reduce<Json>((at, step) => at[step] as Json, document as Json) as Record<string, unknown>;
    if (value === undefined) delete holder[last];
    // A copy: a later change may reach into what an earlier one has set.
    else holder[last] = structuredClone(value);
  }
  return document;
}

/** The demo with some values set, parsed; throws with the faults when it is not sound. */
export function project(changes: Readonly<Record<string, unknown>> = {}): Project {
  const result = checkProject(demoWith(changes));
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('\n'));
  return result.value;
}

export function firstLayout(of: Project): Layout {
  const [layout] = of.layouts;
  if (!layout) throw new Error('a project holds at least one layout');
  return layout;
}

/** Changes that make a desk one could meet: any size, seat and aim, drivers beside the middle, leaning baffles. */
export const anyDesk: fc.Arbitrary<Record<string, unknown>> = fc
  .record({
    depth: numberFrom(120, 400),
    rake: numberFrom(-6, 12),
    tweeterOffset: numberFrom(-40, 40),
    wooferDepth: numberFrom(0, 40),
    mirrored: fc.boolean(),
    offset: numberFrom(-150, 150),
    setback: numberFrom(0, 700),
    earHeight: numberFrom(1000, 1400),
    deskHeight: numberFrom(650, 800),
    x: numberFrom(250, 900),
    leftX: numberFrom(250, 900),
    y: numberFrom(120, 500),
    leftY: numberFrom(120, 500),
    lift: numberFrom(4, 80),
    through: fc.constantFrom('tweeter', 'woofer', { between: ['tweeter', 'woofer'], fraction: 0.3 }),
    toe: fc.oneof(
      fc.constant({ rule: 'to-head' }),
      fc.constant({ rule: 'to-ear' }),
      numberFrom(0, 800).map((distance) => ({ rule: 'behind-head', distance })),
      fc.constant({ rule: 'straight' }),
      numberFrom(-10, 50).map((degrees) => ({ rule: 'as-set', degrees })),
    ),
  })
  .map((at) => ({
    '/speaker/depth': at.depth,
    '/speaker/baffleRake': at.rake,
    '/speaker/mirrored': at.mirrored,
    '/speaker/drivers/0/offset': at.tweeterOffset,
    '/speaker/drivers/1/acousticDepth': at.wooferDepth,
    '/layouts/0/desk/height': at.deskHeight,
    '/layouts/0/listener/offset': at.offset,
    '/layouts/0/listener/setback': at.setback,
    '/layouts/0/listener/earHeight': at.earHeight,
    '/layouts/0/placement/right/x': at.x,
    '/layouts/0/placement/right/y': at.y,
    '/layouts/0/placement/left/x': -at.leftX,
    '/layouts/0/placement/left/y': at.leftY,
    '/layouts/0/stand/lift': at.lift,
    '/layouts/0/aim/through': at.through,
    '/layouts/0/aim/toe': at.toe,
  }));
