import { parentOf } from '$lib/document/pointer.ts';

/**
 * Brings the control at a pointer into view and gives it the focus; where there is none on the page, the nearest thing
 * above it that there is.
 */
export function reveal(pointer: string): void {
  const found = nearest(pointer);
  if (found === null) return;
  for (let up = found.closest('details'); up; up = up.parentElement?.closest('details') ?? null) up.open = true;
  const target = found instanceof HTMLDetailsElement ? found.querySelector('summary') : found;
  target?.focus({ preventScroll: true });
  target?.scrollIntoView({ block: 'center' });
}

function nearest(pointer: string): HTMLElement | null {
  for (let at: string | null = pointer; at !== null; at = parentOf(at)) {
    const found =
      document.getElementById(at) ?? document.querySelector<HTMLElement>(`[data-at=${CSS.escape(at) || '""'}]`);
    if (found) return found;
  }
  return null;
}
