import { expect, test } from 'vitest';
import { plan } from '$lib/solution/plan.ts';
import { readPlaceAsk } from '$lib/study/placing/readAsk.ts';
import { knownStands, PlaceForm } from '$lib/views/search/placeForm.svelte.ts';
import { firstLayout, project } from '../../projects.ts';

const of = project();
const layout = firstLayout(of);
const planned = plan(of, layout, false);

function form(): PlaceForm {
  if (!planned.ok) throw new Error('the demo has a plan');
  return new PlaceForm(planned.value);
}

test('begins with the stands of the layout, and is an ask as its file has it', () => {
  const asked = form();
  const read = readPlaceAsk(asked.documentOf('mm'), of, layout);
  if (!read.ok) throw new Error('it is sound');
  const { stands, allowed, marks, setback, earHeight } = read.value;
  expect(stands.right.lift).toBe(12);
  expect(allowed).toBe('safe-zone');
  expect(marks).toEqual({ left: 0, right: 700, front: 0, back: 700 });
  expect(setback).toEqual({ from: -20, to: 380 });
  expect(earHeight).toBeNull();
});

test('tells what is wrong at the number, unless it does not count', () => {
  const asked = form();
  asked.set('tilt', 'steep');
  expect(asked.faultOf('tilt', 'mm')).toBe('Enter −60 to 60°');
  expect(asked.documentOf('mm')).toBeNull();
  asked.of = { layout: 'another', built: null };
  expect(asked.faultOf('tilt', 'mm')).toBeNull();
  expect(asked.documentOf('mm')).toMatchObject({ stands: { layout: 'another' } });
  asked.set('x/from', 500);
  asked.set('x/to', 300);
  expect(asked.faultOf('x/to', 'mm')).toBe('Enter no less than where it begins');
  asked.moves = { ...asked.moves, marks: false };
  expect(asked.documentOf('mm')).toMatchObject({ marks: false });
  asked.set('miss', 0);
  expect(asked.faultOf('miss', 'mm')).toBeNull();
  asked.by = 'miss';
  expect(asked.faultOf('miss', 'mm')).toBe('Enter 0.1 to 500 mm');
});

test('offers every other layout’s stands, and those as built wherever readings tell how they stand', () => {
  const reading = (what: string, value: number) => ({ what, value, sure: 0.3 });
  const readings = [reading('front-height', 60), reading('rear-height', 15)];
  const built = (left: unknown[], right: unknown[]) => ({ sides: { left: { readings: left }, right: { readings: right } } }); // prettier-ignore
  const namesOf = (changes: Record<string, unknown>) => {
    const changed = project(changes);
    const made = plan(changed, firstLayout(changed), false);
    if (!made.ok) throw new Error('it has a plan');
    return knownStands(made.value).map((one) => [one.layout, one.built !== null]);
  };
  const others = of.layouts.slice(1).map(({ name }) => [name, false]);
  expect(namesOf({})).toEqual(others);
  expect(namesOf({ '/layouts/0/built': built(readings, readings) })).toEqual([[layout.name, true], ...others]);
  // One side read, or too little read of it, tells no pair.
  expect(namesOf({ '/layouts/0/built': built(readings, []) })).toEqual(others);
  expect(namesOf({ '/layouts/0/built': built(readings, readings.slice(1)) })).toEqual(others);

  const asked = form();
  const stand = { tilt: 11.5, lift: 14 };
  asked.of = { layout: layout.name, built: { left: stand, right: { ...stand, lift: 15 } } };
  const read = readPlaceAsk(asked.documentOf('mm'), of, layout);
  if (!read.ok) throw new Error('it is sound');
  expect([read.value.stands.left.lift, read.value.stands.right.lift]).toEqual([14, 15]);
});
