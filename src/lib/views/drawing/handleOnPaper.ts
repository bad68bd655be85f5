import type { Point } from '$lib/geometry/point.ts';
import type { Handle } from '$lib/drawing/handle.ts';
import { spokenHandle } from '$lib/drawing/handleText.ts';
import { toPaper, type Place } from '$lib/drawing/place.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { pathData } from './pathData.ts';

/** What of a handle is pressed and heard, and not seen. */
export interface HandleTouch {
  /** What a screen reader says. */
  readonly spoken: string;
  readonly at: Point;
  readonly body: string;
}

/** What a screen draws for one handle, in px on the sheet. */
export interface HandleOnPaper {
  readonly id: string;
  readonly handle: Handle;
  /** px for each mm. */
  readonly scale: number;
  /** What is pressed and heard. */
  readonly touch: HandleTouch;
  readonly at: Point;
  readonly body: string;
  /** Whether it is an edge to be pushed, and not a thing. */
  readonly isEdge: boolean;
  readonly way: 'both' | 'across' | 'up';
}

export function handleOnPaper(handle: Handle, place: Place, display: LengthDisplay): HandleOnPaper {
  const isEdge = handle.body.length === 2;
  const at = toPaper(place, handle.at);
  const body = pathData(
    handle.body.map((point) => toPaper(place, point)),
    !isEdge,
  );
  return {
    id: handle.id,
    handle,
    scale: place.scale,
    touch: { spoken: spokenHandle(handle, display), at, body },
    at,
    body,
    isEdge,
    way: handle.across && handle.up ? 'both' : handle.across ? 'across' : 'up',
  };
}
