type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/** What somebody made of a control. */
type Entered =
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'tick'; readonly on: boolean }
  | { readonly kind: 'choice'; readonly index: number };

const controlsOf = (part: Element): Control[] => [...part.querySelectorAll<Control>('input, select, textarea')];

/** What was entered into a control since it was served; null for nothing. */
function enteredIn(control: Control): Entered | null {
  if (control instanceof HTMLSelectElement) {
    const { selectedIndex: index, options } = control;
    const served = [...options].findIndex(({ defaultSelected }) => defaultSelected);
    return index === Math.max(0, served) ? null : { kind: 'choice', index };
  }
  if (control instanceof HTMLInputElement && (control.type === 'checkbox' || control.type === 'radio')) {
    const { checked: on, defaultChecked } = control;
    return on === defaultChecked ? null : { kind: 'tick', on };
  }
  return control.value === control.defaultValue ? null : { kind: 'text', value: control.value };
}

function enter(control: Control, entered: Entered): void {
  if (entered.kind === 'text') control.value = entered.value;
  else if (entered.kind === 'choice' && control instanceof HTMLSelectElement) control.selectedIndex = entered.index;
  else if (entered.kind === 'tick' && control instanceof HTMLInputElement) control.checked = entered.on;
  for (const kind of ['input', 'change']) control.dispatchEvent(new Event(kind, { bubbles: true }));
}

/** What is marked in the text field that has the focus. Returns what marks it again. */
function markedIn(part: Element): () => void {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement) || !part.contains(field)) return () => undefined;
  const { selectionStart: start, selectionEnd: end } = field;
  return () => (start === null ? undefined : field.setSelectionRange(start, end));
}

/**
 * What was typed, ticked or chosen in a part of the page before its scripts heard of it, and what is marked there. Returns
 * what enters it again, into the part when it is alive, or into what has come in its place. No browser may fill
 * in controls by itself from an earlier visit (`autocomplete="off"`): that would look the same.
 */
export function typedMeanwhile(served: Element): (alive: Element) => void {
  const entered = controlsOf(served).map(enteredIn);
  const mark = markedIn(served);
  return (alive) => {
    controlsOf(alive).forEach((control, index) => {
      const value = entered[index];
      // Of a row of radio buttons only the one that was chosen says so.
      if (value && !(value.kind === 'tick' && !value.on && control.type === 'radio')) enter(control, value);
    });
    mark();
  };
}
