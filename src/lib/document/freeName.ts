/** `driver 3`, or the next number that is free. */
export function freeName(stem: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map(({ name }) => name));
  let number = taken.length + 1;
  while (names.has(`${stem} ${number}`)) number += 1;
  return `${stem} ${number}`;
}
