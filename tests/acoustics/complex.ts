/** Just enough complex arithmetic to add waves: real and imaginary part. */
export type Complex = readonly [number, number];

export const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
export const times = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
export const over = (a: Complex, b: Complex): Complex => {
  const [x, y] = times(a, [b[0], -b[1]]);
  const square = b[0] ** 2 + b[1] ** 2;
  return [x / square, y / square];
};
export const magnitude = (a: Complex): number => Math.hypot(a[0], a[1]);
export const angle = (a: Complex): number => Math.atan2(a[1], a[0]);
/** e^(j·turn). */
export const expi = (turn: number): Complex => [Math.cos(turn), Math.sin(turn)];
