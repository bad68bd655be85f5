import { expect, test } from 'vitest';
import { compareBuilds } from '$lib/solution/builds.ts';
import { choiceRows, countBy, unknowns } from '$lib/views/workshop/choices.ts';
import { firstLayout, project } from '../../projects.ts';

function rowsOf(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const choices = compareBuilds(of, firstLayout(of), countBy(of));
  return { names: choiceRows(choices, 'mm').map(({ name }) => name), unknown: unknowns(choices) };
}

test('minutes and cost are rows only once a speed or a price is given', () => {
  const bare = rowsOf({});
  expect(bare.names).not.toContain('Cost');
  expect(bare.names).not.toContain('Cutting');
  expect(bare.names).toContain('Finished mass');
  expect(bare.unknown).toContain('the price of a sheet of "MDF 3 mm"');
  const priced = rowsOf({ '/stock/0/price': 4.5 });
  expect(priced.names).toContain('Cost');
  expect(priced.names).not.toContain('Cutting');
  expect(rowsOf({ '/stock/0/feed': { outside: 12, inside: 12, mark: 60 } }).names).toContain('Cutting');
});
