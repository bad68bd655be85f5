import type { Attachment } from 'svelte/attachments';
import type { Undo } from '$lib/document/undo.svelte.ts';

const isField = (target: EventTarget | null): boolean => target instanceof HTMLInputElement && target.type === 'text';

/**
 * Makes what is typed into one field one step of undo, from the first key to the leaving of the field; Escape takes it
 * back. For an element round such fields.
 */
export function typingGesture(undo: Undo): Attachment<HTMLElement> {
  return (element) => {
    const begin = ({ target }: Event): void => {
      if (isField(target) && !undo.gesturing) undo.begin();
    };
    const press = (event: KeyboardEvent): void => {
      if (!isField(event.target)) return;
      if (event.key === 'ArrowUp' || event.key === 'ArrowDown') begin(event);
      else if (event.key === 'Enter') undo.finish();
      else if (event.key === 'Escape' && undo.gesturing) {
        undo.cancel();
        event.preventDefault();
      }
    };
    const leave = (): void => undo.finish();
    element.toggleAttribute('data-steps', true);
    // In capture, so that a gesture is open before the field makes its edit.
    element.addEventListener('input', begin, { capture: true });
    element.addEventListener('keydown', press, { capture: true });
    element.addEventListener('focusout', leave);
    return () => {
      element.removeEventListener('input', begin, { capture: true });
      element.removeEventListener('keydown', press, { capture: true });
      element.removeEventListener('focusout', leave);
    };
  };
}
