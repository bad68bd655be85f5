import { servedHeads } from '$lib/drawing/fanItems.ts';
import { wallsDrawn } from '$lib/drawing/roomFromAbove.ts';
import type { Plan } from '$lib/solution/document.ts';

/** What there is to be seen of a plan in space, in words. */
export function sceneText({ layout }: Plan): string {
  const heads = servedHeads(layout, 'right').length;
  return [
    'the desk',
    'both loudspeakers on their stands with their axes',
    counted(layout.surfaces.length, 'shelf or stand’s plate', 'shelves or stands’ plates'),
    counted(layout.monitors.length, 'screen'),
    counted(wallsDrawn(layout).length, 'wall'),
    heads === 0 ? 'the head' : `the head and ${counted(heads, 'other posture')}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** `1 wall`, `2 walls`; nothing for none. */
const counted = (count: number, what: string, several = `${what}s`): string =>
  count === 0 ? '' : `${count} ${count === 1 ? what : several}`;
