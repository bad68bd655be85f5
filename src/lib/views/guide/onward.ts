import type { Attachment } from 'svelte/attachments';

/** What is asked, in its order: values, and choices that are still open. How sure a value is waits aside. */
const ASKED = 'input[type=text]:not([data-aside] *), [data-open] input[type=radio], [data-end] button:enabled';

/** Goes to a control of the guide, and to its step where that is not the one that is shown. */
export function goTo(control: HTMLElement): void {
  const step = control.closest('.step');
  if (step && !control.checkVisibility()) location.hash = step.id;
  control.focus();
  if (control instanceof HTMLInputElement && control.type === 'text') control.select();
}

/** Makes Enter go on to whatever is asked next, from the last value to the download. For an element round the steps. */
export const onward: Attachment<HTMLElement> = (guide) => {
  const press = (event: KeyboardEvent): void => {
    const { target } = event;
    if (event.key !== 'Enter' || event.defaultPrevented || !(target instanceof HTMLInputElement)) return;
    const next = [...guide.querySelectorAll<HTMLElement>(ASKED)].find(
      (one) => target.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING && !isSameChoice(one, target),
    );
    if (next === undefined) return;
    event.preventDefault();
    goTo(next);
  };
  guide.addEventListener('keydown', press);
  return () => guide.removeEventListener('keydown', press);
};

const isSameChoice = (one: HTMLElement, other: HTMLInputElement): boolean =>
  one instanceof HTMLInputElement && one.type === 'radio' && one.name === other.name;
