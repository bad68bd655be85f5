import { expect, test } from 'vitest';
import { plan } from '$lib/solution/plan.ts';
import { readPlaceAsk } from '$lib/study/placing/readAsk.ts';
import { PlaceForm } from '$lib/views/search/placeForm.svelte.ts';
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
  asked.of = 'another';
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
