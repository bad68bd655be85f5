import { describe, expect, test } from 'vitest';
import { readAsk } from '$lib/study/ask.ts';
import { freeInputs } from '$lib/study/freeInputs.ts';
import { measures } from '$lib/study/measures.ts';
import { plan } from '$lib/solution/plan.ts';
import { askOf, questions, type AskDocument } from '$lib/study/questions.ts';
import { answering, dimensionsOf, isWithin, middling, spanOf, type Point } from '$lib/views/search/dimensions.ts';
import { OwnAsk } from '$lib/views/search/ownAsk.svelte.ts';
import { ruleText } from '$lib/views/search/ruleWords.ts';
import { countText, nameOf } from '$lib/views/search/words.ts';
import { firstLayout, project } from '../../projects.ts';

const of = project();
const layout = firstLayout(of);
const outcome = plan(of, layout);
if (!outcome.ok) throw new Error('the demo has a plan');
const planned = outcome.value;
const [sixty] = questions;
if (!sixty) throw new Error('there are questions');
const asked = askOf(sixty, of, layout);
const named = (...names: string[]) => measures.filter(({ name }) => names.includes(name));
const MM = { length: 'mm', fraction: null } as const;

describe('aims of one’s own', () => {
  const rowOf = (own: OwnAsk, label: string) => {
    const row = own.free.find(({ input }) => input.label === label);
    if (!row) throw new Error(`nothing is called ${label}`);
    return row;
  };

  test('begin as the question before them, and are an ask', () => {
    const own = new OwnAsk(planned, asked);
    const document = own.documentOf('mm');
    expect(document?.free).toEqual(asked.free);
    expect(document?.aims).toEqual(asked.aims);
    const sorted = (rules: readonly object[]) => rules.map((rule) => JSON.stringify(rule)).sort();
    expect(sorted(document?.rules ?? [])).toEqual(sorted(asked.rules));
    expect(document && own.excessOf(document)).toBeNull();
  });

  test('tell at the number what is wrong with it, in the unit that it is typed in, and are no ask meanwhile', () => {
    const own = new OwnAsk(planned, asked);
    const set = (change: object) => own.setFree(rowOf(own, 'Head from the edge'), change);
    const told = (unit: 'mm' | 'in' = 'mm') => own.faultsOf(rowOf(own, 'Head from the edge'), unit);
    set({ from: 'abc' });
    expect(told()).toEqual({ from: 'Enter −3000 to 6000 mm', to: null, step: null });
    expect(told('in').from).toBe('Enter −118.11 to 236.22 in');
    expect(own.documentOf('mm')).toBeNull();
    set({ from: 400, to: 300 });
    expect(told().to).toBe('Enter no less than where it begins');
    set({ from: 300, to: 400, step: 0 });
    expect(told().step).toBe('Enter 0.1 to 5000 mm');
    set({ step: '' });
    expect(told().step).toBe('Enter 0.1 to 5000 mm');
    set({ step: 50, on: true });
    expect(own.documentOf('mm')?.free).toContainEqual({ pointer: '/listener/setback', mirror: false, from: 300, to: 400, step: 50 }); // prettier-ignore
    const [tilt] = own.rules.filter(({ measure }) => measure.name === 'tilt');
    if (!tilt) throw new Error('tilt is ruled');
    own.setRule(tilt, { value: 'steep' });
    expect(own.rules.map((row) => own.faultOf(row, 'mm')).filter((fault) => fault !== null)).toEqual(['Enter −90 to 180°']); // prettier-ignore
  });

  test('let each mark move by itself, the other one staying, and begin so with an ask that does', () => {
    const own = new OwnAsk(planned, asked);
    own.setFree(rowOf(own, 'Marks, sideways'), { from: 300 });
    own.asPair = false;
    expect(rowOf(own, 'Right mark, sideways')).toMatchObject({ on: true, from: 300 });
    expect(rowOf(own, 'Left mark, sideways').on).toBe(false);
    own.setFree(rowOf(own, 'Left mark, from the edge'), { on: true, step: 100 });
    const alone = own.documentOf('mm');
    if (!alone) throw new Error('it is sound');
    const pointers = alone.free.filter((one) => 'mirror' in one && !one.mirror).map(({ pointer }) => pointer);
    expect(pointers).toEqual(['/placement/left/y', '/placement/right/x', '/placement/right/y', '/listener/setback']);
    expect(readAsk(alone, layout).ok).toBe(true);
    expect(new OwnAsk(planned, alone).asPair).toBe(false);
    own.asPair = true;
    const marks = (free: AskDocument['free'] = []) => free.map((one) => [one.pointer, 'mirror' in one && one.mirror]);
    expect(marks(own.documentOf('mm')?.free)).toEqual(marks(asked.free));
  });

  test('free the rules of toe and tilt too, the present ones as they are', () => {
    const own = new OwnAsk(planned, asked);
    const [toe, tilt] = own.choices;
    if (!toe || !tilt) throw new Error('toe and tilt have rules');
    expect(toe.on || tilt.on).toBe(false);
    expect(toe.options.map(({ rule }) => rule.rule)).toEqual([
      'to-head',
      'to-ear',
      'behind-head',
      'straight',
      'as-set',
    ]);
    own.setChoice(toe, { on: true, options: toe.options.map((one) => ({ ...one, on: false })) });
    const [empty] = own.choices;
    expect(empty && own.choiceFault(empty)).toBe('Choose at least one');
    expect(own.documentOf('mm')).toBeNull();
    if (empty) own.setChoice(empty, { options: toe.options.map((one, i) => ({ ...one, on: i < 3 })) });
    own.setChoice(tilt, { on: true });
    const document = own.documentOf('mm');
    const tilted = Math.round(10 * planned.sides.right.tilt) / 10;
    expect(document?.free.slice(-2)).toEqual([
      {
        pointer: '/aim/toe',
        values: [{ rule: 'to-head' }, { rule: 'to-ear' }, { rule: 'behind-head', distance: 300 }],
      },
      { pointer: '/aim/tilt', values: [{ rule: 'tilt-to-ear' }, { rule: 'lift-to-ear', degrees: tilted }, { rule: 'as-set', degrees: tilted }] }, // prettier-ignore
    ]);
    expect(document && readAsk(document, layout).ok).toBe(true);
    const again = document && new OwnAsk(planned, document);
    expect(again?.choices.map(({ options }) => options.map(({ on }) => on))).toEqual([[true, true, true, false, false], [true, true, true]]); // prettier-ignore
    const words = again?.choices.flatMap(({ options }) => options.map(({ rule }) => ruleText(rule, MM)));
    expect(words?.slice(2, 5)).toEqual([expect.stringMatching(/^to meet 300\smm behind the head$/), 'straight ahead', expect.stringMatching(/^as set, [\d.]+°$/)]); // prettier-ignore
  });

  test('are either a rule of toe or the number of the present one', () => {
    const set = project({ '/layouts/0/aim/toe': { rule: 'as-set', degrees: 21 } });
    const turned = plan(set, firstLayout(set));
    if (!turned.ok) throw new Error('it has a plan');
    const own = new OwnAsk(turned.value, asked);
    const [toe] = own.choices;
    if (!toe) throw new Error('toe has rules');
    expect(toe.options.map(({ rule }) => rule)).toContainEqual({ rule: 'as-set', degrees: 21 });
    own.setChoice(toe, { on: true });
    own.setFree(rowOf(own, 'Toe'), { on: true });
    expect(own.choices.map((row) => own.choiceFault(row))).toEqual(['Choose either this or “Toe”', null]);
    expect(own.documentOf('mm')).toBeNull();
  });

  test('say the same where only steps are too fine', () => {
    const own = new OwnAsk(planned, asked);
    own.setFree(rowOf(own, 'Head from the edge'), { from: 100, step: 0.1 });
    own.setFree(rowOf(own, 'Marks, sideways'), { step: 0.1 });
    const document = own.documentOf('mm');
    expect(document && own.excessOf(document)).toEqual({ all: 2301 * 3001 * 31, most: 500_000, coarser: 7.6 });
  });

  test('say of a billion candidates what would fit, before any work', () => {
    const own = new OwnAsk(planned, asked);
    for (const label of ['Marks, sideways', 'Marks, from the edge', 'Head from the edge']) {
      own.setFree(rowOf(own, label), { from: 100, to: 199.9, step: 0.1 });
    }
    const document = own.documentOf('mm');
    if (!document) throw new Error('it is sound but for that');
    expect(own.excessOf(document)).toEqual({ all: 1_000_000_000, most: 500_000, coarser: 12.6 });
    // As the ask itself says.
    const read = readAsk(document, layout);
    expect(read.ok ? '' : read.faults[0]?.message).toMatch(/got 1000000000: steps 12\.6 times as large/);
  });
});

describe('what was found', () => {
  const point = (index: number, error: number, move: number): Point => ({
    index,
    at: { 'triangle-error': error, move },
  });
  const front = [point(1, 0, 300), point(2, 3, 100), point(3, 20, 0)];

  test('differs in the inputs, then in what is wanted and ruled, each once', () => {
    const read = readAsk(asked, layout);
    if (!read.ok) throw new Error('it is an ask');
    expect(dimensionsOf(read.value, freeInputs(of, layout)).map(({ label }) => label)).toEqual([
      'Marks, sideways',
      'Marks, from the edge',
      'Head from the edge',
      ...named('triangle-error').map(({ label }) => label),
      ...named('move').map(({ label }) => label),
      ...asked.rules.flatMap(({ measure }) => named(measure).map(({ label }) => label)),
    ]);
  });

  test('is narrowed down by the ends of each axis, both ends among what stays', () => {
    const left = (from: number, to: number) => front.filter((one) => isWithin(one, { move: [from, to] })).map(({ index }) => index); // prettier-ignore
    expect(left(100, 300)).toEqual([1, 2]);
    expect(left(1, 99)).toEqual([]);
    expect(isWithin({ index: 4, at: { move: null } }, { move: [0, 300] })).toBe(false);
    expect(spanOf(front, 'move')).toEqual([0, 300]);
    expect(spanOf(front, 'tilt')).toBeNull();
  });

  test('shows a middling one where nobody has chosen: least given up in all aims together', () => {
    expect(middling(front, named('triangle-error', 'move'))?.index).toBe(2);
    expect(middling([], named('move'))).toBeNull();
  });

  test('of a question shows what it means: of those as good as the best in the first aim, the best in the second', () => {
    const close = [...front, point(4, 0.4, 264), point(5, 0.6, 250)];
    expect(answering(close, named('triangle-error', 'move'), 0.5)?.index).toBe(4);
    expect(answering(close, named('triangle-error', 'move'), 1)?.index).toBe(5);
    expect(answering(close, named('triangle-error', 'move'), 0)?.index).toBe(1);
    expect(answering([], named('triangle-error', 'move'), 1)).toBeNull();
    const zone = (index: number, wide: number, move: number) => ({ index, at: { 'safe-zone': wide, move } });
    const wider = [...named('safe-zone'), ...named('move')];
    expect(answering([zone(1, 29, 298), zone(2, 28.5, 247), zone(3, 24, 85)], wider, 1)?.index).toBe(2);
  });

  test('is named by what it is', () => {
    expect(nameOf(named('triangle-error', 'move'), { 'triangle-error': 0.41, move: 87.2 }, MM)).toBe('0.4° off 60°, moved 87 mm'); // prettier-ignore
    expect(nameOf(named('tilt'), { tilt: 12 }, MM)).toBe('steepest tilt 12.0°');
    expect(nameOf(named('tilt'), { tilt: null }, MM)).toBe('searched');
    expect(countText(1_234_567)).toBe('1\u202f234\u202f567');
  });
});
