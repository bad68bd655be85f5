import { expect, it } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { demoWith, project } from '../projects.ts';

const three = { outside: '#ff0000', inside: '#0000FF', mark: '#00aa00' };

it('gives every layer one colour unless the project names three', () => {
  expect(project().cutter.colours).toBeNull();
  expect(project({ '/cutter': undefined }).cutter.colours).toBeNull();
  expect(project({ '/cutter/colours': three }).cutter.colours).toEqual(three);
});

it.each(['red', '#f00', '#ff00000', '#gg0000', 'ff0000', '#ff0000"/><script>', '#ff0000\n', '', 7, null])(
  'refuses %j as a colour',
  (inside) => {
    const parsed = checkProject(demoWith({ '/cutter/colours': { ...three, inside } }));
    expect(parsed).toMatchObject({ ok: false, faults: [{ pointer: '/cutter/colours/inside' }] });
    expect(parsed.ok ? '' : parsed.faults[0]?.message).toContain(
      'expected a colour as # and six hexadecimal digits, got ',
    );
  },
);

it('refuses colours for some layers only, and for layers that are not there', () => {
  const some = checkProject(demoWith({ '/cutter/colours': { outside: '#ff0000', inside: '#0000ff' } }));
  expect(some.ok ? '' : some.faults[0]?.message).toBe('expected a colour as # and six hexadecimal digits, got nothing');
  const more = checkProject(demoWith({ '/cutter/colours': { ...three, fold: '#ff0000' } }));
  expect(more.ok ? '' : more.faults[0]?.message).toBe('unknown key, expected one of outside, inside, mark');
});
