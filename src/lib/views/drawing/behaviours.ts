import { drag, select, zoom, zoomIdentity, type D3DragEvent, type ZoomTransform } from 'd3';
import type { Point } from '$lib/geometry/point.ts';
import type { Zoom } from '$lib/drawing/place.ts';

/** What a dragged element is told. */
export interface Dragging {
  /** Whether it lets itself be held. Points in px on the sheet. */
  start(at: Point): boolean;
  move(at: Point, event: MouseEvent | TouchEvent): void;
  end(event: MouseEvent | TouchEvent): void;
}

type Dragged = D3DragEvent<SVGGElement, unknown, unknown> & { readonly sourceEvent: MouseEvent | TouchEvent };

/** Lets mouse and finger drag an element of a sheet. Returns what ends that. */
export function makeDraggable(node: SVGGElement, paper: SVGSVGElement, told: Dragging): () => void {
  let mine = false;
  const behaviour = drag<SVGGElement, unknown>()
    .container(() => paper)
    .on('start', ({ x, y }: Dragged) => {
      mine = told.start([x, y]) || mine;
    })
    .on('drag', ({ x, y, sourceEvent }: Dragged) => {
      if (mine) told.move([x, y], sourceEvent);
    })
    .on('end', ({ sourceEvent }: Dragged) => {
      if (mine) told.end(sourceEvent);
      mine = false;
    });
  const selection = select<SVGGElement, unknown>(node).call(behaviour);
  return () => void selection.on('.drag', null);
}

/** Moves the look at a sheet. */
export interface Zooming {
  /** The sheet is this large; it cannot be pushed out of sight. */
  resize(width: number, height: number): void;
  by(factor: number): void;
  shift(x: number, y: number): void;
  fit(): void;
  stop(): void;
}

/** Lets wheel, pinch and drag move the look at a sheet. `most`: how far it can be enlarged. */
export function makeZoomable(
  paper: SVGSVGElement,
  most: number,
  takes: (event: Event) => boolean,
  onzoom: (look: Zoom) => void,
): Zooming {
  const behaviour = zoom<SVGSVGElement, unknown>()
    .scaleExtent([1, most])
    .filter(takes)
    .on('zoom', ({ transform: { k, x, y } }: { transform: ZoomTransform }) => onzoom({ k, x, y }));
  const selection = select<SVGSVGElement, unknown>(paper).call(behaviour).on('dblclick.zoom', null);
  return {
    resize(width, height) {
      const all: [[number, number], [number, number]] = [[0, 0], [width, height]]; // prettier-ignore
      behaviour.extent(all).translateExtent(all);
      selection.call(behaviour.translateBy, 0, 0);
    },
    by: (factor) => void selection.call(behaviour.scaleBy, factor),
    shift: (x, y) => void selection.call(behaviour.translateBy, x, y),
    fit: () => void selection.call(behaviour.transform, zoomIdentity),
    stop: () => void selection.on('.zoom', null),
  };
}
