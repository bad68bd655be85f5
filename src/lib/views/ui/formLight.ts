import type { Attachment } from 'svelte/attachments';
import { groupOf } from '$lib/drawing/thing.ts';
import type { OpenProject } from '$lib/document/openProject.svelte.ts';
import type { Selection } from '$lib/document/selection.svelte.ts';

const LIT = 'data-lit';

/**
 * Ties a form to what is chosen: a field or group that gets the focus is chosen, and what is chosen on the drawing is lit up
 * in the form, opened and, where the form scrolls by itself, brought into view.
 */
export function formLight(open: OpenProject, selection: Selection): Attachment<HTMLElement> {
  return (form) => {
    const focused = ({ target }: FocusEvent): void => {
      if (!(target instanceof Element)) return;
      if (target.id.startsWith('/')) return selection.choose(target.id, true);
      const group = target.closest('[data-at]')?.getAttribute('data-at');
      if (group) selection.choose(group, false);
    };
    form.addEventListener('focusin', focused);
    const { chosen } = selection;
    const pointer = chosen?.kind === 'value' ? chosen.pointer : chosen && groupOf(chosen.thing, open.layoutIndex);
    const putOut = pointer ? lightUp(form, pointer) : undefined;
    return () => {
      form.removeEventListener('focusin', focused);
      putOut?.();
    };
  };
}

/** Lights up the place of a value or thing; where its group is not filled yet, as soon as it is. Returns what puts it out. */
function lightUp(form: HTMLElement, pointer: string): () => void {
  let lit: Element | null = null;
  const light = (): void => {
    lit = place(form, pointer);
    if (!lit) return;
    filling.disconnect();
    lit.setAttribute(LIT, '');
    if (!form.contains(document.activeElement)) show(form, lit);
  };
  const filling = new MutationObserver(light);
  filling.observe(form, { childList: true, subtree: true });
  light();
  return () => {
    filling.disconnect();
    lit?.removeAttribute(LIT);
  };
}

/** The control of a value, or the group of a thing. */
const place = (form: HTMLElement, pointer: string): Element | null =>
  form.querySelector(`[id=${CSS.escape(pointer)}]`)?.closest('.row') ??
  form.querySelector(`[data-at=${CSS.escape(pointer)}]`);

function show(form: HTMLElement, found: Element): void {
  for (let up = found.closest('details'); up; up = up.parentElement?.closest('details') ?? null) up.open = true;
  if (getComputedStyle(form).overflowY === 'auto') scrollWithin(form, found);
}

/** The form alone scrolls, and no further than it must: a page that moved would carry off what the pointer holds. */
function scrollWithin(form: HTMLElement, found: Element): void {
  const [frame, box] = [form.getBoundingClientRect(), found.getBoundingClientRect()];
  const over = box.top - frame.top;
  const under = Math.min(box.bottom - frame.bottom, over);
  if (over < 0) form.scrollTop += over;
  else if (under > 0) form.scrollTop += under;
}
