import { describe, expect, it } from 'vitest';
import { Watched } from '$lib/state/watched.ts';

describe('Watched', () => {
  it('has the value of the last document at every pointer', () => {
    const watched = new Watched({ a: { b: 1 }, c: [2] });
    expect([watched.at('/a/b'), watched.at('/c/0'), watched.at('/d')]).toEqual([1, 2, undefined]);
    watched.follow({ a: { b: 3 }, d: null });
    expect([watched.at('/a/b'), watched.at('/c/0'), watched.at('/d')]).toEqual([3, undefined, null]);
  });
});
