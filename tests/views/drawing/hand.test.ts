import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Handle } from '$lib/drawing/handle.ts';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { Announcer } from '$lib/views/drawing/announcer.svelte.ts';
import { Hand, type Grasp } from '$lib/views/drawing/hand.svelte.ts';
import { project } from '../../projects.ts';

const EAR = '/layouts/0/listener/earHeight';
const KEYS = { shiftKey: false, altKey: false };

/** The ears on a view on which a millimetre is two pixels. */
const ears: Handle = {
  id: 'handle-head',
  thing: 'head',
  name: 'head',
  at: [0, 1180],
  across: null,
  up: {
    input: EAR,
    value: 1180,
    rate: 1,
    range: { what: 'a height', min: 300, max: 2500, unit: 'mm' },
    says: 'over the floor',
    sign: 1,
    align: [],
  },
  body: [],
};
const grasp: Grasp = { view: 'side', handle: ears, scale: 2 };

let frames: (() => void)[] = [];
const nextFrame = (): void => frames.splice(0).forEach((paint) => paint());

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (paint: () => void) => frames.push(paint));
  vi.stubGlobal('cancelAnimationFrame', (number: number) => (frames[number - 1] = () => undefined));
});
afterEach(() => {
  frames = [];
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

function atHand() {
  const open = new OpenProject(project());
  const undo = new Undo(open);
  const still: string[] = [];
  const sheet = { hold: (view: string) => still.push(view), release: () => still.push('released') };
  const hand = new Hand(open, undo, sheet, new Announcer());
  const ear = (): unknown => open.at(EAR);
  return { open, undo, hand, still, ear };
}

test('a press that hardly moves is a click: nothing changes, and nothing can be undone', () => {
  const { hand, undo, still, ear } = atHand();
  expect(hand.take(grasp, [100, 100])).toBe(true);
  expect(hand.take(grasp, [0, 0])).toBe(false);
  hand.move([101, 98], KEYS);
  nextFrame();
  hand.drop();
  expect([ear(), undo.undoLabel, still]).toEqual([1180, null, []]);
});

test('a drag is one edit a frame, on round numbers, and one step of undo', () => {
  const { hand, undo, still, ear } = atHand();
  hand.take(grasp, [100, 100]);
  hand.move([100, 80], KEYS);
  hand.move([100, 58], KEYS);
  expect(ear()).toBe(1180);
  nextFrame();
  // 42 px up are 21 mm, of which the grid of 5 mm leaves 20.
  expect(ear()).toBe(1200);
  expect(hand.live).toMatchObject({ view: 'side', id: 'handle-head', refused: false });
  hand.move([100, 38], { ...KEYS, altKey: true });
  hand.drop();
  expect([ear(), hand.live, still]).toEqual([1211, null, ['side', 'released']]);
  undo.undo();
  expect([ear(), undo.undoLabel]).toEqual([1180, null]);
});

test('what cannot stay where it is let go of returns to where it last could', () => {
  const { open, hand, ear } = atHand();
  hand.take(grasp, [0, 0]);
  hand.move([0, -40], KEYS);
  nextFrame();
  // Far up the axis cannot follow, and the stand has no answer.
  hand.move([0, -2600], KEYS);
  nextFrame();
  expect(hand.live?.refused).toBe(true);
  hand.drop();
  expect([ear(), open.faults]).toEqual([1200, []]);
});

test('a drag that is cancelled leaves nothing behind', () => {
  const { hand, undo, still, ear } = atHand();
  hand.take(grasp, [0, 0]);
  hand.move([0, -40], KEYS);
  nextFrame();
  hand.cancel();
  hand.move([0, -80], KEYS);
  nextFrame();
  hand.drop();
  expect([ear(), undo.undoLabel, hand.live, still]).toEqual([1180, null, null, ['side', 'released']]);
});

test('arrow keys in a row are one step, and stay where another step would have no answer', () => {
  const { hand, undo, open, ear } = atHand();
  expect(hand.nudge(grasp, 'across', 5)).toBe(false);
  expect(hand.nudge(grasp, 'up', 5)).toBe(true);
  const up = ears.up && { ...ears.up, value: 1185 };
  hand.nudge({ ...grasp, handle: { ...ears, up } }, 'up', 5);
  hand.nudge({ ...grasp, handle: { ...ears, up: up && { ...up, value: 1190 } } }, 'up', 1300);
  expect([ear(), open.faults]).toEqual([1190, []]);
  hand.rest();
  undo.undo();
  expect([ear(), undo.undoLabel]).toEqual([1180, null]);
});
