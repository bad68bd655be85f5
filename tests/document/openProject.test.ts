import { describe, expect, test } from 'vitest';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../projects.ts';

const EAR = '/layouts/0/listener/earHeight';
const opened = () => new OpenProject(project());

describe('an open project', () => {
  test('has its answer at once, and nothing wrong', () => {
    const open = opened();
    expect([open.shown?.head.z, open.faults]).toEqual([1180 - 735, []]);
  });

  test('draws each edit', () => {
    const open = opened();
    open.edit(EAR, 1200);
    expect([open.at(EAR), open.shown?.head.z, open.faults]).toEqual([1200, 1200 - 735, []]);
  });

  test('keeps what is typed unsound, tells what is wrong and goes on showing the last answer', () => {
    const open = opened();
    const { shown } = open;
    open.edit(EAR, -5);
    expect(open.at(EAR)).toBe(-5);
    expect(open.faults).toEqual([{ pointer: EAR, message: 'expected a length over 0 mm, got -5' }]);
    expect(open.shown).toBe(shown);
    expect(open.sound).toBe(false);
    open.edit(EAR, 1200);
    expect([open.shown?.head.z, open.faults, open.sound]).toEqual([1200 - 735, [], true]);
  });

  test('knows what is wrong at once, and tells it when the typing has come to an end', () => {
    const open = opened();
    const other = '/layouts/0/desk/height';
    open.edit(other, -1);
    open.beginTyping(EAR);
    open.edit(EAR, 12);
    expect(open.faults.map(({ pointer }) => pointer).toSorted()).toEqual([other, EAR]);
    expect(open.toldFaults.map(({ pointer }) => pointer)).toEqual([other]);
    expect([open.messagesAt(EAR), open.messagesAt(other)]).toEqual([[], ['Enter 150 to 2000 mm']]);
    // The end of another field's typing is none of this one's.
    open.finishTyping(other);
    expect(open.messagesAt(EAR)).toEqual([]);
    open.finishTyping(EAR);
    expect(open.toldFaults).toEqual(open.faults);
    expect(open.messagesAt(EAR)).toEqual(['Enter 200 to 2500 mm']);
  });

  test('marks what the late findings of the answer that is shown concern, not of one before', () => {
    const open = opened();
    const through = '/layouts/0/aim/through';
    const { shown } = open;
    const lined = project({
      '/speaker/designPoint': { driver: 'tweeter', distance: 1000 },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -15 },
    });
    const solved = solve(lined, firstLayout(lined));
    if (!solved.ok || !shown) throw new Error('both have an answer');
    const late = solved.value.findings.filter(({ code }) => code === 'crossover-sum');
    expect(late.length).toBeGreaterThan(0);
    expect(open.levelAt(through)).toBeUndefined();
    open.takeFindings(shown, late);
    expect(open.levelAt(through)).toBe('caution');
    // The quick checks are told beside them.
    expect(open.levelAt('/layouts/0/placement/right/x')).toBe('caution');
    open.edit(EAR, 1200);
    expect(open.levelAt(through)).toBeUndefined();
    open.takeFindings(shown, late);
    expect(open.levelAt(through)).toBeUndefined();
  });

  test('lets another project come in its place', () => {
    const open = opened();
    open.edit(EAR, -5);
    open.replace(project({ [EAR]: 1210 }));
    expect([open.shown?.head.z, open.faults]).toEqual([1210 - 735, []]);
  });
});
