import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Autosave } from '$lib/document/persistence/autosave.svelte.ts';
import { saveWords } from '$lib/document/persistence/saveStatus.ts';
import { whenHidden } from '$lib/document/persistence/pageHide.ts';
import { done, storageError, type StorageResult } from '$lib/document/persistence/storageError.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function saving(outcome: () => StorageResult<{ readonly saved: number }> = () => done({ saved: Date.now() })) {
  const save = vi.fn(outcome);
  return { save, autosave: new Autosave(save) };
}

describe('saving by itself', () => {
  it('saves soon after a change, once', () => {
    const { save, autosave } = saving();
    expect(autosave.status).toEqual({ kind: 'untouched' });
    autosave.touch();
    autosave.touch();
    expect(autosave.status).toEqual({ kind: 'saving' });
    expect(autosave.unsaved).toBe(true);
    vi.advanceTimersByTime(1000);
    expect(save).toHaveBeenCalledTimes(1);
    expect(autosave.status).toMatchObject({ kind: 'saved' });
    expect(autosave.unsaved).toBe(false);
    vi.advanceTimersByTime(10_000);
    expect(save).toHaveBeenCalledTimes(1);
  });

  it('saves on the way through a change without end', () => {
    const { save, autosave } = saving();
    for (let frame = 0; frame < 300; frame += 1) {
      autosave.touch();
      vi.advanceTimersByTime(16);
    }
    // 300 frames of 16 ms are 4.8 s: every other second, for saving holds up a frame.
    expect(save).toHaveBeenCalledTimes(2);
    vi.advanceTimersByTime(1000);
    expect(save).toHaveBeenCalledTimes(3);
  });

  it('does not wait for the end of what is typed, nor longer than a drag takes', () => {
    const { save, autosave } = saving();
    for (let key = 0; key < 4; key += 1) {
      autosave.touch();
      vi.advanceTimersByTime(130);
    }
    expect(save).toHaveBeenCalledTimes(1);
    for (let frame = 0; frame < 40; frame += 1) {
      autosave.touch();
      vi.advanceTimersByTime(16);
    }
    expect(save).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(200);
    expect(save).toHaveBeenCalledTimes(2);
    expect(autosave.unsaved).toBe(false);
  });

  it('saves at once when flushed, and nothing when nothing has changed', () => {
    const { save, autosave } = saving();
    autosave.flush();
    expect(save).not.toHaveBeenCalled();
    autosave.touch();
    autosave.flush();
    expect(save).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(1000);
    expect(save).toHaveBeenCalledTimes(1);
  });

  it('says why it could not save, keeps saying so, and tries again', () => {
    let full = true;
    const { save, autosave } = saving(() => (full ? storageError('full') : done({ saved: 5 })));
    autosave.touch();
    vi.advanceTimersByTime(1000);
    expect(autosave.status).toEqual({ kind: 'failed', error: { kind: 'full' } });
    autosave.touch();
    expect(autosave.status).toEqual({ kind: 'failed', error: { kind: 'full' } });
    expect(autosave.unsaved).toBe(true);
    full = false;
    vi.advanceTimersByTime(1000);
    expect(save).toHaveBeenCalledTimes(2);
    expect(autosave.status).toEqual({ kind: 'saved', at: 5 });
  });

  it('forgets a change that another document has replaced', () => {
    const { save, autosave } = saving();
    autosave.touch();
    autosave.settle(7);
    expect(autosave.status).toEqual({ kind: 'saved', at: 7 });
    autosave.settle(null);
    expect(autosave.status).toEqual({ kind: 'untouched' });
    vi.advanceTimersByTime(1000);
    expect(save).not.toHaveBeenCalled();
  });

  it('has words for each status', () => {
    const time = (at: number): string => `14:0${at}`;
    expect(saveWords({ kind: 'untouched' }, time)).toBe('Nothing to save yet');
    expect(saveWords({ kind: 'saving' }, time)).toBe('Saving');
    expect(saveWords({ kind: 'saved', at: 3 }, time)).toBe('Saved at 14:03');
    expect(saveWords({ kind: 'failed', error: { kind: 'full' } }, time)).toMatch(
      /^Not saved\. The browser has no room/,
    );
  });
});

describe('a page that is hidden', () => {
  class Page extends EventTarget {
    visibilityState = 'visible';
  }

  it('is heard when it is hidden and when it is left, until stopped', () => {
    const [page, frame, hide] = [new Page(), new EventTarget(), vi.fn()];
    const stop = whenHidden(page, frame, hide);
    page.dispatchEvent(new Event('visibilitychange'));
    expect(hide).toHaveBeenCalledTimes(0);
    page.visibilityState = 'hidden';
    page.dispatchEvent(new Event('visibilitychange'));
    expect(hide).toHaveBeenCalledTimes(1);
    frame.dispatchEvent(new Event('pagehide'));
    expect(hide).toHaveBeenCalledTimes(2);
    stop();
    page.dispatchEvent(new Event('visibilitychange'));
    frame.dispatchEvent(new Event('pagehide'));
    expect(hide).toHaveBeenCalledTimes(2);
  });
});
