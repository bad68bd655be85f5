const FIRST = 'A'.charCodeAt(0);
const LETTERS = 26;

/** What a layout is called beside its name, by its place from 0: A to Z, then AA, AB and so on. */
export function letterOf(place: number): string {
  const before = Math.floor(place / LETTERS);
  return (before === 0 ? '' : letterOf(before - 1)) + String.fromCharCode(FIRST + (place % LETTERS));
}
