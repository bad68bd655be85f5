import { expect, test } from 'vitest';
import { MILLIMETRES } from '$lib/project/units.ts';
import { plan } from '$lib/solution/plan.ts';
import { verdictOf, verdictOfFaults } from '$lib/views/ui/verdict.ts';
import { firstLayout, project } from '../../projects.ts';

const of = project({});
const planned = plan(of, firstLayout(of));
if (!planned.ok) throw new Error('the demo has no plan');
const { checks } = planned.value;

test('counts what both sides have alike once, worst first, and tells the worst', () => {
  const found = verdictOf(checks, 'nothing', MILLIMETRES);
  expect(found.level).toBe('caution');
  expect(found.count).toBe('2 cautions, 1 note');
  expect(found.leads).toEqual({ code: 'slides' });
  expect(found.detail).toMatch(/^A cabinet may slide when the desk tilts by .*10° is asked\.$/);
});

test('says nothing is well before the sound has been checked, or when it could not be', () => {
  expect(verdictOf([], 'nothing', MILLIMETRES)).toMatchObject({ level: 'good', count: 'All is well', leads: null });
  expect(verdictOf([], 'sound', MILLIMETRES)).toMatchObject({ level: 'waiting', count: 'Nothing found so far' });
  expect(verdictOf([], 'failed', MILLIMETRES).rest).toBe('The sound could not be checked.');
  expect(verdictOf(checks, 'sound', MILLIMETRES).rest).toBe('The sound is still being checked.');
  expect(verdictOf(checks, 'nothing', MILLIMETRES).rest).toBe('');
});

test('a fault names its field and what it takes', () => {
  const faults = [{ pointer: '/layouts/0/desk/height', message: 'expected 150 to 2000, got 2950' }];
  const draft = { layouts: [{ desk: { height: 2950 } }] };
  const found = verdictOfFaults(faults, draft, MILLIMETRES);
  expect(found).toMatchObject({ level: 'fault', count: '1 fault', leads: { pointer: '/layouts/0/desk/height' } });
  expect(found.detail).toMatch(/^Desk, height: /);
  expect(found.detail).toContain('Enter 150 to 2000');
});
