import { describe, expect, test } from 'vitest';
import { demoProject } from '$lib/project/demo.ts';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';

const curve = (count: number, from = 0) => ({ from, step: 0.01, levels: Array.from({ length: count }, () => 80.25) });
const one = (more: object = {}) => ({ name: 'a', of: 'left', at: 'seat', curve: curve(479), ...more });

function opened(heard: unknown) {
  const document: { layouts: Record<string, unknown>[] } = structuredClone(demoProject) as never;
  const [layout] = document.layouts;
  if (layout) layout.built = { sides: { left: {}, right: {} }, ...(heard === undefined ? {} : { heard }) };
  return checkProject(document);
}
const faults = (heard: unknown): readonly string[] => {
  const parsed = opened(heard);
  return parsed.ok ? [] : parsed.faults.map(faultLine);
};

describe('measured responses in a project', () => {
  test('are none in a file from before there were any', () => {
    const parsed = opened(undefined);
    expect(parsed.ok && parsed.value.layouts[0]?.built?.heard).toEqual([]);
  });

  test('fill the rest in: not smoothed, not moved', () => {
    const parsed = opened([one()]);
    expect(parsed.ok && parsed.value.layouts[0]?.built?.heard[0]).toMatchObject({ smoothed: 'none', moved: { x: 0, y: 0, z: 0 } });
  }); // prettier-ignore

  test.each([
    ['beyond the grid', [one({ curve: curve(100, 400) })], '/layouts/0/built/heard/0/curve/levels: expected at most 79 levels from cell 400 up, got 100'],
    ['of less than an octave', [one({ curve: curve(47) })], '/layouts/0/built/heard/0/curve/levels: expected a list of 48 to 479 levels, got a list of 47'],
    ['with a level of a thousand million', [one({ curve: { from: 0, step: 0, levels: [...curve(60).levels, 1e9] } })], '/layouts/0/built/heard/0/curve/levels/60: expected a level from -400 to 400 dB, got 1000000000'],
    ['of nobody', [one({ of: 'centre' })], '/layouts/0/built/heard/0/of: expected "left" or "right" or "both", got "centre"'],
    ['more than a layout holds', Array.from({ length: 13 }, () => one()), '/layouts/0/built/heard: expected a list of 0 to 12 measured responses, got a list of 13'],
  ])('%s are refused', (_, heard, message) => {
    expect(faults(heard)).toEqual([message]);
  }); // prettier-ignore
});
