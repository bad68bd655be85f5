import { drag, select, type D3DragEvent } from 'd3';
import type { Attachment } from 'svelte/attachments';
import type { Grasp, Hand } from './hand.svelte.ts';

type Dragged = D3DragEvent<SVGGElement, unknown, unknown> & { readonly sourceEvent: MouseEvent | TouchEvent };

/**
 * Lets a pointer move what the element stands for. Escape takes the move back. `grasp` is asked anew at each press; null:
 * there is nothing to hold.
 */
export function holding(hand: Hand, grasp: () => Grasp | null): Attachment<SVGGElement> {
  return (node) => {
    let mine = false;
    const escape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      hand.cancel();
    };
    const end = (): void => {
      mine = false;
      window.removeEventListener('keydown', escape, true);
    };
    const paper = node.ownerSVGElement;
    if (!paper) return;
    const behaviour = drag<SVGGElement, unknown>()
      .container(() => paper)
      .on('start', ({ x, y }: Dragged) => {
        const held = grasp();
        mine ||= held !== null && hand.take(held, [x, y]);
        if (mine) window.addEventListener('keydown', escape, true);
      })
      .on('drag', ({ x, y, sourceEvent }: Dragged) => {
        if (mine) hand.move([x, y], sourceEvent);
      })
      .on('end', ({ sourceEvent }: Dragged) => {
        if (!mine) return;
        end();
        if (sourceEvent.type === 'touchcancel') hand.cancel();
        hand.drop();
      });
    const selection = select<SVGGElement, unknown>(node).call(behaviour);
    return () => {
      selection.on('.drag', null);
      if (!mine) return;
      end();
      hand.cancel();
      hand.drop();
    };
  };
}
