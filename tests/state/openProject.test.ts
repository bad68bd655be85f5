import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { OpenProject } from '$lib/state/openProject.svelte.ts';
import type { Check } from '$lib/state/settle.ts';
import { project } from '../projects.ts';

const EAR = '/layouts/0/listener/earHeight';

/** A project whose check comes, or does not, when it is told to. */
function late() {
  const asked: { readonly bring: () => void; readonly fail: () => void }[] = [];
  const fetch = (): Promise<Check> =>
    new Promise((resolve, reject) => {
      asked.push({ bring: () => resolve(checkProject), fail: () => reject(new Error('no network')) });
    });
  return { open: new OpenProject(project(), null, fetch), asked };
}

const rest = (): Promise<void> => new Promise((done) => setTimeout(done));

describe('an open project whose check is not there yet', () => {
  test('is shown, in every layout and with nothing wrong, and asks for none', () => {
    const { open, asked } = late();
    open.chooseLayout(0);
    expect([open.shown?.plan.head.z, open.faults, asked.length]).toEqual([1180 - 735, [], 0]);
  });

  test('keeps what is typed and fetches the check; draws it when that has come', async () => {
    const { open, asked } = late();
    open.edit(EAR, 1190);
    open.edit(EAR, 1200);
    expect(open.at(EAR)).toBe(1200);
    expect(open.shown?.plan.head.z).toBe(1180 - 735);
    // No file is made of numbers that are not the typed ones.
    expect(open.faults).toHaveLength(1);
    expect(asked).toHaveLength(1);
    asked[0]?.bring();
    await rest();
    expect([open.shown?.plan.head.z, open.faults]).toEqual([1200 - 735, []]);
    open.edit(EAR, -5);
    expect(open.faults).toEqual([{ pointer: EAR, message: 'expected a length over 0 mm, got -5' }]);
  });

  test('tells of unsound numbers typed before it came', async () => {
    const { open, asked } = late();
    open.edit(EAR, -5);
    asked[0]?.bring();
    await rest();
    expect(open.faults).toEqual([{ pointer: EAR, message: 'expected a length over 0 mm, got -5' }]);
  });

  test('says so when it cannot be fetched, and tries again with the next change', async () => {
    const { open, asked } = late();
    open.edit(EAR, 1190);
    asked[0]?.fail();
    await rest();
    expect(open.faults[0]?.message).toMatch(/could not be fetched/);
    open.edit(EAR, 1200);
    asked[1]?.bring();
    await rest();
    expect([open.shown?.plan.head.z, open.faults]).toEqual([1200 - 735, []]);
  });

  test('has it fetched ahead, and draws nothing anew for that', async () => {
    const { open, asked } = late();
    const { shown } = open;
    const ready = open.prepare();
    asked[0]?.bring();
    await ready;
    expect(open.shown).toBe(shown);
    await open.prepare();
    expect(asked).toHaveLength(1);
  });

  test('lets another project come in its place meanwhile', async () => {
    const { open, asked } = late();
    open.edit(EAR, -5);
    open.replace(project({ [EAR]: 1210 }));
    asked[0]?.bring();
    await rest();
    expect([open.shown?.plan.head.z, open.faults]).toEqual([1210 - 735, []]);
  });
});
