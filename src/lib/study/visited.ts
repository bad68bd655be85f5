/**
 * The numbers from 0 to `count` − 1 of one of several shares, each once, in an order that a seed sets: place i is
 * (start + i · stride) mod count, with a stride that has no factor in common with the count. Neighbours come far from each
 * other, so that the best are soon near.
 *
 * @param count At most 2²⁶, so that no product loses a digit.
 */
export function* visited(count: number, seed: number, share: number, shares: number): Generator<number, void> {
  let stride = 1 + Math.floor(count * GOLDEN);
  while (common(stride, count) !== 1) stride += 1;
  const start = Math.floor(count * ((seed * GOLDEN) % 1));
  const step = (stride * shares) % count;
  let at = (start + stride * share) % count;
  for (let place = share; place < count; place += shares) {
    yield at;
    at += step;
    if (at >= count) at -= count;
  }
}

/** Part of the golden section: multiples of it are spread most evenly. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

function common(a: number, b: number): number {
  return b === 0 ? a : common(b, a % b);
}
