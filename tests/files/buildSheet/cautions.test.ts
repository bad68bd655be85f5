import { expect, test } from 'vitest';
import { cautionsOf } from '$lib/files/buildSheet/cautions.ts';
import { plan } from '$lib/solution/plan.ts';
import { firstLayout, project } from '../../projects.ts';

function aboutsOf(changes: Readonly<Record<string, unknown>>): readonly string[] {
  const of = project(changes);
  const planned = plan(of, firstLayout(of));
  if (!planned.ok) throw new Error('there is a plan');
  return [...new Set(cautionsOf(planned.value).map(({ about }) => about))];
}

const solid = { '/layouts/0/stand/build': 'solid' };
const bandSaw = { '/shop/bandSaw': { height: 200, tiltsMost: 45 } };

test('what can hurt is named where the build has it, and nowhere else', () => {
  expect(aboutsOf({})).toContain('Laser');
  expect(aboutsOf({})).not.toContain('Saw');
  // No saw of the common shop is deep enough for the block: it is sawn and chiselled by hand.
  expect(aboutsOf(solid)).toEqual(expect.arrayContaining(['Saw', 'Chisel and plane']));
  expect(aboutsOf(solid)).not.toContain('Laser');
  expect(aboutsOf({ ...solid, ...bandSaw })).toContain('Saw');
  expect(aboutsOf({ ...solid, ...bandSaw })).not.toContain('Chisel and plane');
  expect(aboutsOf({ '/layouts/0/stand/build': 'skinned' })).toContain('Printer');
});

test('dust, glue, the cabinet and loud sound are named for every build', () => {
  for (const build of ['stacked', 'skinned', 'solid']) {
    const abouts = aboutsOf({ '/layouts/0/stand/build': build });
    expect(abouts).toEqual(expect.arrayContaining(['Dust', 'Glue', 'Cabinet', 'Loud sound']));
  }
});
