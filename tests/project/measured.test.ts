import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { followSuggestion } from '$lib/document/follow.ts';
import { withEntered } from '$lib/document/markEntered.ts';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { demoProject } from '$lib/project/demo.ts';
import { measuredIn, measuredOf } from '$lib/project/measured.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { startProject } from '$lib/project/start.ts';
import { demoWith, project } from '../projects.ts';

const EAR = '/layouts/0/listener/earHeight';

function checked(document: unknown): Project {
  const result = checkProject(document);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

const withoutKey = (document: unknown): unknown =>
  JSON.parse(
    JSON.stringify(document, (key, value: unknown) => (key === 'entered' || key === 'example' ? undefined : value)),
  );

describe('which values the user entered', () => {
  it('is none of the example and none of a new project', () => {
    expect(measuredOf(checked(demoProject), 0)).toMatchObject({ entered: 0, of: 26 });
    // No screen and no crossover: each is one answer that is still open.
    expect(measuredOf(checked(startProject), 0)).toMatchObject({ entered: 0, of: 3 + 4 + 2 + 4 + 4 + 3 + 2 });
  });

  it('is every one of a file that does not say', () => {
    const { entered, of, values } = measuredOf(checked(withoutKey(demoProject)), 0);
    expect([entered, of]).toEqual([26, 26]);
    expect([...values.values()].every(Boolean)).toBe(true);
  });

  it('counts marks that mirror each other once, and others each', () => {
    expect(measuredOf(project({ '/layouts/0/placement/right/x': 500 }), 0).of).toBe(28);
    expect(measuredIn(project(), 0, '/layouts/0/placement')).toEqual({ entered: 0, of: 2 });
  });

  it('is told group by group, which add up', () => {
    const groups = ['/layouts/0/listener', '/layouts/0/desk', '/layouts/0/placement', '/layouts/0/monitors'];
    const all = [...groups, '/speaker', '/speaker/drivers', '/speaker/crossovers', '/stock'];
    const counts = all.map((group) => measuredIn(project(), 0, group).of);
    expect(counts).toEqual([3, 4, 2, 5, 4, 4, 1, 3]);
    expect(counts.reduce((sum, one) => sum + one)).toBe(measuredOf(project(), 0).of);
  });

  it('grows by what is edited, each value once, whatever the order', () => {
    const pointers = [...measuredOf(project(), 0).values.keys()];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pointers, '/layouts/0/stand/lift', '/title')), (edited) => {
        const { values } = measuredOf(checked(withEntered(demoWith(), edited)), 0);
        for (const [pointer, entered] of values) expect(entered).toBe(edited.includes(pointer));
      }),
    );
  });

  it('goes with the edit, in the same step of undo', () => {
    const open = new OpenProject(project());
    const undo = new Undo(open);
    open.edit(EAR, 1200);
    undo.follow();
    expect(measuredOf(open.project, 0).values.get(EAR)).toBe(true);
    open.edit('/layouts/0/placement/right/x', 470);
    undo.follow();
    expect(measuredIn(open.project, 0, '/layouts/0/placement')).toEqual({ entered: 1, of: 2 });
    expect(measuredOf(open.project, 0).values.get('/layouts/0/placement/left/x')).toBe(true);
    expect(undo.undo()?.message).toBe('Undone: Placement');
    expect(undo.undo()).toEqual({ message: 'Undone: Listener, ear height', pointer: EAR });
    expect(open.draft).toEqual(project());
  });

  it('is a step of its own where a value is confirmed as it stands', () => {
    const open = new OpenProject(project());
    const undo = new Undo(open);
    open.edit(EAR, 1180);
    undo.follow();
    expect(undo.undoLabel).toBe('Value confirmed');
    expect(measuredOf(open.project, 0).entered).toBe(1);
  });

  it('does not grow by an estimate, which takes back what was measured there', () => {
    const open = new OpenProject(project());
    open.edit(EAR, 1200);
    open.estimateAll([
      [EAR, 1190],
      ['/sure/earHeight', 45],
    ]);
    expect(open.at(EAR)).toBe(1190);
    expect(open.enteredAt(EAR)).toBe(false);
    const own = new OpenProject(checked(withoutKey(demoProject)));
    own.estimateAll([[EAR, 1190]]);
    const { values } = measuredOf(own.project, 0);
    for (const [pointer, entered] of values) expect([pointer, entered]).toEqual([pointer, pointer !== EAR]);
  });

  it('grows by a suggestion that is taken', () => {
    const open = new OpenProject(project());
    const edits = [{ pointer: '/layouts/0/placement/right/x', value: 277 }];
    followSuggestion(open, new Undo(open), { label: { template: 'inwards', quantities: {} }, edits });
    expect(measuredOf(open.project, 0).values.get('/layouts/0/placement/right/x')).toBe(true);
    expect(measuredOf(open.project, 0).entered).toBe(1);
  });

  it('goes from the right mark to the left one when they are tied together', () => {
    const free = project({ '/layouts/0/placement/right/x': 500 });
    const tied = (edit: (open: OpenProject) => void): readonly boolean[] => {
      const open = new OpenProject(free);
      edit(open);
      open.setMirrored(true);
      return ['x', 'y'].map((key) => open.enteredAt(`/layouts/0/placement/left/${key}`));
    };
    expect(tied(() => undefined)).toEqual([false, false]);
    expect(tied((open) => open.edit('/layouts/0/placement/right/x', 505))).toEqual([true, false]);
  });

  it('is refused by name where a file tells of a value that is not counted', () => {
    const result = checkProject(demoWith({ '/speaker/entered': ['mass'] }));
    expect(result.ok ? [] : result.faults).toEqual([
      {
        pointer: '/speaker/entered/0',
        message: 'expected "width" or "height" or "depth" or "baffleRake" or "crossovers", got "mass"',
      },
    ]);
  });
});
