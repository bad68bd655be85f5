import type { Attachment } from 'svelte/attachments';
import { nearer, turned, type Look } from '$lib/drawing/space/look.ts';

/** Degrees turned by a pixel of a drag, by an arrow key, and by one with Shift. */
const BY_PIXEL = 0.4;
const BY_KEY = 5;
const BY_LONG_KEY = 15;
/** How much nearer a press comes, and a notch of the wheel of 100 px. */
export const STEP = 1.2;
const BY_WHEEL = 0.0015;

/** What a key does to a look; undefined for one that does nothing. */
export function turnedByKey(look: Look, key: string, long: boolean): Look | undefined {
  const by = long ? BY_LONG_KEY : BY_KEY;
  switch (key) {
    case 'ArrowLeft':
      return turned(look, -by, 0);
    case 'ArrowRight':
      return turned(look, by, 0);
    case 'ArrowUp':
      return turned(look, 0, by);
    case 'ArrowDown':
      return turned(look, 0, -by);
    case '+':
    case '=':
      return nearer(look, STEP);
    case '-':
    case '_':
      return nearer(look, 1 / STEP);
  }
  return undefined;
}

/** Lets pointer, fingers, wheel and keys change a look: what is dragged follows the hand, an arrow key moves the eye. */
export const turning =
  (look: () => Look, change: (look: Look) => void): Attachment<HTMLElement> =>
  (node) => {
    /** Where each finger, or the pointer, is. */
    const held = new Map<number, { readonly x: number; readonly y: number }>();
    const spread = (): number => {
      const [a, b] = [...held.values()];
      return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
    };
    const down = (event: PointerEvent): void => {
      if (event.pointerType === 'mouse' && event.button !== 0) return;
      if (held.size < 2) {
        held.set(event.pointerId, { x: event.clientX, y: event.clientY });
        node.setPointerCapture(event.pointerId);
      }
    };
    const move = (event: PointerEvent): void => {
      const before = held.get(event.pointerId);
      if (!before) return;
      const apart = spread();
      held.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (held.size > 1) {
        if (apart > 0 && spread() > 0) change(nearer(look(), spread() / apart));
      } else {
        change(turned(look(), (before.x - event.clientX) * BY_PIXEL, (event.clientY - before.y) * BY_PIXEL));
      }
    };
    const up = (event: PointerEvent): void => void held.delete(event.pointerId);
    // The page scrolls on where there is nothing to be had from going farther.
    const wheel = (event: WheelEvent): void => {
      if (event.deltaY > 0 && look().near <= 1) return;
      event.preventDefault();
      change(nearer(look(), Math.exp(-event.deltaY * BY_WHEEL)));
    };
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const to = turnedByKey(look(), event.key, event.shiftKey);
      if (!to) return;
      event.preventDefault();
      change(to);
    };
    node.addEventListener('pointerdown', down);
    node.addEventListener('pointermove', move);
    node.addEventListener('pointerup', up);
    node.addEventListener('pointercancel', up);
    node.addEventListener('wheel', wheel, { passive: false });
    node.addEventListener('keydown', press);
    return () => {
      node.removeEventListener('pointerdown', down);
      node.removeEventListener('pointermove', move);
      node.removeEventListener('pointerup', up);
      node.removeEventListener('pointercancel', up);
      node.removeEventListener('wheel', wheel);
      node.removeEventListener('keydown', press);
    };
  };
