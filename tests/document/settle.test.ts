import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { withValue } from '$lib/document/pointer.ts';
import { settle, settleProject } from '$lib/document/settle.ts';
import { notFinite } from '../notFinite.ts';
import { demoWith, project } from '../projects.ts';
import { runs } from '../runs.ts';

const demo = project();
const start = settleProject(demo, 0);

describe('an open project', () => {
  test('shows a sound project and its plan', () => {
    expect(start.faults).toEqual([]);
    expect(start.shown).toMatchObject({ project: demo, layout: demo.layouts[0], layoutIndex: 0 });
    expect(start.shown?.layout.name).toBe('window side');
  });

  test('follows a sound edit', () => {
    const raised = settle(withValue(start.draft, '/layouts/0/listener/earHeight', 1200), 0, start, checkProject);
    expect(raised.faults).toEqual([]);
    expect(raised.shown?.head.z).toBe(1200 - 735);
  });

  test('keeps the last sound state while the draft is unsound', () => {
    const broken = settle(withValue(start.draft, '/speaker/width', -5), 0, start, checkProject);
    expect(broken.faults).toEqual([{ pointer: '/speaker/width', message: 'expected a length over 0 mm, got -5' }]);
    expect(broken.shown).toBe(start.shown);
    expect(broken.project).toBe(demo);
    const mended = settle(withValue(broken.draft, '/speaker/width', 170), 0, broken, checkProject);
    expect(mended.faults).toEqual([]);
    expect(mended.shown?.project.speaker.width).toBe(170);
  });

  test('keeps the last answer while a sound project has none, and the project moves on', () => {
    const tooNear = settle(
      withValue(start.draft, '/layouts/0/aim/tilt', { rule: 'lift-to-ear', degrees: 60 }),
      0,
      start,
      checkProject,
    );
    expect(tooNear.faults.length).toBeGreaterThan(0);
    expect(tooNear.faults[0]?.pointer).toMatch(/^\/layouts\/0\/aim\/tilt/);
    expect(tooNear.shown).toBe(start.shown);
    expect(tooNear.project.layouts[0]?.aim.tilt).toEqual({ rule: 'lift-to-ear', degrees: 60 });
  });

  test('draws another layout, and never the first one in its place', () => {
    const document = demoWith();
    const second = {
      ...demo.layouts[0],
      name: 'door side',
      listener: { ...demo.layouts[0]?.listener, earHeight: 1210 },
    };
    const two = settle(withValue(document, '/layouts/1', second), 1, start, checkProject);
    expect(two.shown).toMatchObject({ layoutIndex: 1, layout: { name: 'door side' } });
    const broken = settle(withValue(two.draft, '/layouts/1/listener/earHeight', 'tall'), 1, two, checkProject);
    expect(broken.shown).toBe(two.shown);
    expect(settle(document, 7, start, checkProject)).toMatchObject({ shown: null, faults: [] });
  });

  test('any value in any field: an answer of its own, or faults and the last one; nothing thrown', () => {
    const pointers = Object.keys(fieldTable).map((pattern) => pattern.replaceAll('*', '0'));
    const nonsense = fc.oneof(fc.jsonValue(), fc.double(), fc.constantFrom('', 'NaN', -1, 0, 1e308, '1e999', null));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...pointers), nonsense), { minLength: 1, maxLength: 4 }),
        (edits) => {
          const end = edits.reduce(
            (before, [pointer, value]) => settle(withValue(before.draft, pointer, value), 0, before, checkProject),
            start,
          );
          expect(end.shown).not.toBeNull();
          expect(notFinite(end.shown)).toEqual([]);
          if (end.faults.length === 0) expect(end.shown?.project).toBe(end.project);
        },
      ),
      { numRuns: runs(500) },
    );
  });
});
