import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Watched } from '$lib/document/watched.ts';

interface Subscriber {
  told: number;
  stop: (() => void) | undefined;
}
const subscribers = vi.hoisted((): Subscriber[] => []);

// On a server nobody is told of anything. This one is followed from the first look on, as from a component.
vi.mock('svelte/reactivity', () => ({
  createSubscriber: (start: (tell: () => void) => () => void) => {
    const own: Subscriber = { told: 0, stop: undefined };
    subscribers.push(own);
    return () => void (own.stop ??= start(() => void own.told++));
  },
}));

beforeEach(() => void subscribers.splice(0));

describe('Watched', () => {
  it('has the value of the last document at every pointer', () => {
    const watched = new Watched({ a: { b: 1 }, c: [2] });
    expect([watched.at('/a/b'), watched.at('/c/0'), watched.at('/d')]).toEqual([1, 2, undefined]);
    watched.follow({ a: { b: 3 }, d: null });
    expect([watched.at('/a/b'), watched.at('/c/0'), watched.at('/d')]).toEqual([3, undefined, null]);
  });

  it('tells whoever follows a value that has changed, once a change, and nobody else', () => {
    const kept = { deep: true };
    const watched = new Watched({ a: { b: 1 }, c: kept });
    for (const pointer of ['/a/b', '/c', '/d', '/a/b']) watched.at(pointer);
    expect(subscribers).toHaveLength(3);
    const told = () => subscribers.map((one) => one.told);
    watched.follow({ a: { b: 1 }, c: kept });
    expect(told()).toEqual([0, 0, 0]);
    watched.follow({ a: { b: 2 }, c: kept });
    expect(told()).toEqual([1, 0, 0]);
    watched.follow({ a: { b: 2 }, c: kept, d: null });
    expect(told()).toEqual([1, 0, 1]);
    watched.follow({ c: kept });
    expect(told()).toEqual([2, 0, 2]);
  });

  it('tells nobody who has stopped following', () => {
    const watched = new Watched({ a: 1 });
    watched.at('/a');
    subscribers[0]?.stop?.();
    watched.follow({ a: 2 });
    expect(subscribers[0]?.told).toBe(0);
  });
});
