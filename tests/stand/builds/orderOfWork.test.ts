import { describe, expect, test } from 'vitest';
import type { StandSettings } from '$lib/project/project.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import { bodyOf, thin } from './buildRequests.ts';

const bases = ['turned', 'square-to-desk'] as const;
const builds = ['stacked', 'skinned', 'ribbed', 'solid'] as const;

const dressed: Partial<StandSettings> = {
  rods: { diameter: 6, count: 2, clearance: 0.1, edge: 2 },
  veneer: 0.6,
  feet: 2,
  pad: 1.5,
  cable: { width: 10, depth: 5, fromRear: 60 },
};

const stepsOf = (settings: Partial<StandSettings>) =>
  bodyOf({
    stance: { lift: 40 },
    settings: { ...dressed, ribs: null, ...settings, cheeks: { stock: thin.name, count: 1 } },
  }).steps;

describe.each(builds.flatMap((build) => bases.map((base) => ({ build, base }))))('$build, $base', (of) => {
  const steps = stepsOf(of);
  const acts = steps.map(({ act }) => act);
  const first = (act: (typeof acts)[number]): number => acts.indexOf(act);
  const last = (act: (typeof acts)[number]): number => acts.lastIndexOf(act);

  test('the slope is checked while it is bare, the wood before the pad, the baffle last', () => {
    const veneered = first('veneer');
    expect(acts[veneered - 1]).toBe('check');
    expect(last('sand')).toBeLessThan(veneered);
    expect(first('feet')).toBeLessThan(first('pad'));
    expect(acts[first('pad') - 1]).toBe('check');
    expect(first('pad')).toBeLessThan(first('load'));
    expect(last('check')).toBe(acts.length - 1);
  });

  test('rods are tried and the dry stack is measured before the last glue; a base is milled while it is square', () => {
    if (first('rod') >= 0) expect(first('rod')).toBeLessThan(last('glue'));
    expect(first('rod') >= 0).toBe(of.build === 'stacked' || of.build === 'skinned');
    if (of.build === 'stacked') expect(first('check')).toBeLessThan(first('glue'));
    if (of.build === 'solid') expect(first('mill')).toBeLessThan(first('saw'));
    expect(first('mill') >= 0).toBe(of.build === 'solid');
  });

  test('an inch project has no millimetre in it', () => {
    for (const step of steps) expect(sentenceText(step, { length: 'in', fraction: 16 })).not.toMatch(/\bmm\b/);
  });
});
