import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { tillFetched } from '$lib/document/tillFetched.ts';

/** Fails so many times, then gives its part. */
const failing = (times: number) => {
  let left = times;
  return vi.fn(async () => {
    if (left === 0) return 'the part';
    left -= 1;
    throw new TypeError('Failed to fetch dynamically imported module');
  });
};

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('a part that the page cannot do without', () => {
  it('is there at once where nothing fails, and nobody is told', async () => {
    const told = vi.fn();
    await expect(tillFetched(failing(0), new EventTarget(), told)).resolves.toBe('the part');
    expect(told).not.toHaveBeenCalled();
  });

  it('is tried again after a pause, each failure told', async () => {
    const [load, told] = [failing(2), vi.fn()];
    const coming = tillFetched(load, new EventTarget(), told);
    await vi.advanceTimersByTimeAsync(4999);
    expect(load).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(load).toHaveBeenCalledTimes(2);
    await vi.advanceTimersByTimeAsync(5000);
    await expect(coming).resolves.toBe('the part');
    expect(told).toHaveBeenCalledTimes(2);
  });

  it('is tried at once when the network is back, and only once for it', async () => {
    const [load, frame] = [failing(1), new EventTarget()];
    const coming = tillFetched(load, frame);
    await vi.advanceTimersByTimeAsync(10);
    frame.dispatchEvent(new Event('online'));
    await expect(coming).resolves.toBe('the part');
    frame.dispatchEvent(new Event('online'));
    await vi.advanceTimersByTimeAsync(20_000);
    expect(load).toHaveBeenCalledTimes(2);
  });
});
