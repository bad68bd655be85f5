import type { Attachment } from 'svelte/attachments';
import type { Grasp, Hand } from './hand.svelte.ts';
import { pointerTools } from './pointerTools.ts';

/** Lets a pointer move what the element stands for. Escape takes the move back. `grasp` is asked anew at each press. */
export function holding(hand: Hand, grasp: () => Grasp): Attachment<SVGGElement> {
  return (node) => {
    const paper = node.ownerSVGElement;
    if (!paper) return;
    let [held, gone] = [false, false];
    let stop: (() => void) | null = null;
    const escape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      hand.cancel();
    };
    const letGo = (): void => {
      held = false;
      window.removeEventListener('keydown', escape, true);
      hand.drop();
    };
    void pointerTools().then(({ makeDraggable }) => {
      if (gone) return;
      stop = makeDraggable(node, paper, {
        start: (at) => {
          const takes = hand.take(grasp(), at);
          if (takes) window.addEventListener('keydown', escape, true);
          held ||= takes;
          return takes;
        },
        move: (at, event) => hand.move(at, event),
        end: ({ type }) => {
          if (type === 'touchcancel') hand.cancel();
          letGo();
        },
      });
    });
    return () => {
      gone = true;
      stop?.();
      if (!held) return;
      hand.cancel();
      letGo();
    };
  };
}
