import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { inTurn, rush } from '$lib/views/turns.ts';
import { runs } from '../runs.ts';

const task = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Work that notes each of its steps, and asks for other work in its first one. */
function* noted(log: string[], name: string, steps: number, within: () => void = () => undefined) {
  for (let step = 1; step <= steps; step += 1) {
    log.push(`${name}${step}`);
    if (step === 1) within();
    if (step < steps) yield;
  }
}

/** Waits until nothing is to be done any more. */
const allDone = (): Promise<void> =>
  new Promise((done) => {
    inTurn(
      (function* () {
        done();
      })(),
    );
  });

describe('work in turns', () => {
  test('is done a step a task, one piece after the other, and never at once', async () => {
    const log: string[] = [];
    inTurn(noted(log, 'a', 2));
    inTurn(noted(log, 'b', 1));
    expect(log).toEqual([]);
    await task();
    expect(log).toEqual(['a1']);
    await task();
    expect(log).toEqual(['a1', 'a2']);
    await allDone();
    expect(log).toEqual(['a1', 'a2', 'b1']);
  });

  test('does what a piece asks for right after it, in the order of asking', async () => {
    const log: string[] = [];
    inTurn(
      noted(log, 'a', 2, () => {
        inTurn(noted(log, 'b', 1));
        inTurn(noted(log, 'c', 2));
      }),
    );
    inTurn(noted(log, 'd', 1));
    await allDone();
    expect(log).toEqual(['a1', 'a2', 'b1', 'c1', 'c2', 'd1']);
  });

  test('leaves out what is called off, and goes on after what throws', () => {
    vi.useFakeTimers();
    const log: string[] = [];
    inTurn(
      noted(log, 'a', 1, () => {
        throw new Error('on purpose');
      }),
    );
    inTurn(noted(log, 'b', 1))();
    inTurn(noted(log, 'c', 1));
    expect(() => vi.runAllTimers()).toThrow('on purpose');
    vi.runAllTimers();
    vi.useRealTimers();
    expect(log).toEqual(['a1', 'c1']);
  });

  test('can be hurried: at once, with what it asks for next', async () => {
    const log: string[] = [];
    inTurn(noted(log, 'a', 1));
    const hurried = noted(log, 'b', 2, () => void inTurn(noted(log, 'c', 1)));
    inTurn(hurried);
    rush(hurried);
    expect(log).toEqual(['b1', 'b2']);
    await allDone();
    expect(log).toEqual(['b1', 'b2', 'c1', 'a1']);
  });

  test('does every step once, in order, whatever is asked for', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 5 }), async (counts) => {
        const log: string[] = [];
        counts.forEach((count, index) => inTurn(noted(log, `${index}.`, count)));
        await allDone();
        expect(log).toEqual(
          counts.flatMap((count, index) => Array.from({ length: count }, (_, step) => `${index}.${step + 1}`)),
        );
      }),
      { numRuns: runs(20) },
    );
  });
});
