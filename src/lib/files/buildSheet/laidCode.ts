import type { Primitive } from '$lib/drawing/primitive.ts';
import { words } from '$lib/files/pdf/words.ts';
import type { CodeBlock } from './block.ts';
import { BODY, gap, type Laid } from './laid.ts';
import { MODULE, qrRuns } from './qrRuns.ts';

const CAPTION = 5;

/** The code in the middle of the page, its title under it. */
export function laidCode(block: CodeBlock, width: number): readonly Laid[] {
  const side = block.modules.length * MODULE;
  const runs = qrRuns(block);
  return [
    {
      height: side + CAPTION,
      keep: true,
      drawn: (left, top) => [
        ...runs.map(({ x, y, length }): Primitive => {
          const [from, upper] = [left + (width - side) / 2 + x * MODULE, top + y * MODULE];
          const [to, lower] = [from + length * MODULE, upper + MODULE];
          return { kind: 'line', points: [[from, upper], [to, upper], [to, lower], [from, lower]], closed: true, width: 0, fill: 'ink' }; // prettier-ignore
        }),
        words(block.title, { height: BODY, x: left + width / 2, y: top + side + CAPTION - 1, anchor: 'middle' }, width),
      ],
    },
    // With what is said under it.
    { ...gap(2), keep: true },
  ];
}
