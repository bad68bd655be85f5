import type { Attachment } from 'svelte/attachments';
import type { SheetBench } from './bench.svelte.ts';
import type { Which } from '$lib/workshop/nesting/nestMove.ts';

/** Screen pixels that a press may wander before it is a drag: fingers tremble. */
const TREMBLE = 4;
/** mm. One press of an arrow key; ten times as far with shift. */
const STEP = 1;

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The mouse, the finger and the keyboard on the drawing of one sheet. */
export function handle(bench: SheetBench, sheet: number): Attachment<SVGSVGElement> {
  return (svg) => {
    /** Whether the keyboard was used last: then the chosen part keeps the focus, though its drawing is made anew. */
    let keys = false;
    let drag: { readonly id: number; readonly which: Which; readonly from: DOMPoint; moving: boolean } | null = null;

    const whichAt = (target: EventTarget | null): Which | null => {
      const part = target instanceof Element ? target.closest<SVGGElement>('[data-placement]') : null;
      return part === null ? null : { sheet, placement: Number(part.dataset.placement) };
    };

    const isChosen = ({ placement }: Which): boolean => {
      const { chosen } = bench;
      return chosen?.sheet === sheet && chosen.placement === placement;
    };

    function down(event: PointerEvent): void {
      keys = false;
      const which = whichAt(event.target);
      if (which === null || event.button !== 0) return;
      // A finger chooses first, so that the page can be moved with a finger on a sheet.
      if (event.pointerType === 'touch' && !isChosen(which)) return;
      drag = { id: event.pointerId, which, from: new DOMPoint(event.clientX, event.clientY), moving: false };
      svg.setPointerCapture(event.pointerId);
    }

    function move(event: PointerEvent): void {
      if (drag?.id !== event.pointerId) return;
      const { which, from } = drag;
      if (!drag.moving && Math.hypot(event.clientX - from.x, event.clientY - from.y) < TREMBLE) return;
      if (!drag.moving) bench.take(which);
      drag.moving = true;
      const at = over(event) ?? { sheet, svg };
      const placement = bench.sheets[which.sheet]?.placements[which.placement];
      const [start, now] = [real(svg, from), real(at.svg, new DOMPoint(event.clientX, event.clientY))];
      if (placement === undefined || start === null || now === null) return;
      const heights = [bench.sheets[sheet]?.height ?? 0, bench.sheets[at.sheet]?.height ?? 0] as const;
      // On paper y runs down; the part keeps its place under the pointer.
      const x = placement.x + now.x - start.x;
      const y = placement.y + (heights[1] - now.y) - (heights[0] - start.y);
      bench.carry(at.sheet, rounded(x), rounded(y));
    }

    function up(event: PointerEvent): void {
      if (drag?.id !== event.pointerId) return;
      const { which, moving } = drag;
      drag = null;
      if (moving) bench.drop();
      else bench.choose(which);
    }

    function cancel(): void {
      if (drag?.moving) bench.putBack();
      drag = null;
    }

    /** A finger on the chosen part moves it, not the page. */
    function touch(event: TouchEvent): void {
      const which = whichAt(event.target);
      if (which !== null && isChosen(which) && event.touches.length === 1) event.preventDefault();
    }

    function click({ target }: Event): void {
      const which = whichAt(target);
      if (which !== null) bench.choose(which);
    }

    function press(event: KeyboardEvent): void {
      const which = whichAt(event.target);
      keys = true;
      if (which === null || event.ctrlKey || event.metaKey || event.altKey) return;
      if (pressed(which, event.key, event.shiftKey)) event.preventDefault();
    }

    /** Whether the key meant something. */
    function pressed(which: Which, key: string, far: boolean): boolean {
      const { carried } = bench;
      const way = arrows[key];
      if (way !== undefined && carried !== null) {
        const step = far ? 10 * STEP : STEP;
        bench.carry(carried.sheet, rounded(carried.x + step * way[0]), rounded(carried.y + step * way[1]));
      } else if (way !== undefined) focus(which.placement + (way[0] + way[1] > 0 ? 1 : -1));
      else if (key === 'Enter' || key === ' ') {
        if (carried === null) bench.take(which);
        else bench.drop();
      } else if (key === 'Escape' && carried !== null) bench.putBack();
      else if (key === 'r' && carried === null) bench.turn(which);
      else if (key === 'l' && carried === null) bench.toggle(which);
      else if (key === 'Home') focus(0);
      else if (key === 'End') focus((bench.sheets[sheet]?.placements.length ?? 0) - 1);
      else return false;
      return true;
    }

    function focus(placement: number): void {
      const part = svg.querySelector<SVGGElement>(`[data-placement="${placement}"]`);
      if (part === null) return;
      bench.choose({ sheet, placement });
      part.focus();
    }

    /** What is left behind goes back. */
    function leave({ relatedTarget }: FocusEvent): void {
      if (drag === null && relatedTarget !== null) bench.putBack();
      if (relatedTarget !== null) keys = false;
    }

    const anew = new MutationObserver(() => {
      const { chosen } = bench;
      if (keys && chosen?.sheet === sheet && document.activeElement === document.body) focus(chosen.placement);
    });
    anew.observe(svg, { childList: true, subtree: true });

    svg.dataset.sheet = String(sheet);
    svg.addEventListener('pointerdown', down);
    svg.addEventListener('touchstart', touch, { passive: false });
    svg.addEventListener('pointermove', move);
    svg.addEventListener('pointerup', up);
    svg.addEventListener('pointercancel', cancel);
    svg.addEventListener('click', click);
    svg.addEventListener('keydown', press);
    svg.addEventListener('focusout', leave);
    return () => {
      anew.disconnect();
      svg.removeEventListener('pointerdown', down);
      svg.removeEventListener('touchstart', touch);
      svg.removeEventListener('pointermove', move);
      svg.removeEventListener('pointerup', up);
      svg.removeEventListener('pointercancel', cancel);
      svg.removeEventListener('click', click);
      svg.removeEventListener('keydown', press);
      svg.removeEventListener('focusout', leave);
    };
  };
}

/** A thousandth of a millimetre: what files keep. */
const rounded = (value: number): number => Math.round(value * 1000) / 1000;

/** The drawing of a sheet under the pointer. */
function over({ clientX, clientY }: PointerEvent): { readonly sheet: number; readonly svg: SVGSVGElement } | null {
  for (const element of document.elementsFromPoint(clientX, clientY)) {
    const svg = element.closest<SVGSVGElement>('svg[data-sheet]');
    if (svg !== null) return { sheet: Number(svg.dataset.sheet), svg };
  }
  return null;
}

/** Where a point of the screen is on a drawing, in the drawing's own mm, y down. */
const real = (svg: SVGSVGElement, point: DOMPoint): DOMPoint | null => {
  const matrix = svg.getScreenCTM();
  return matrix === null ? null : point.matrixTransform(matrix.inverse());
};
