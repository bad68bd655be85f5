import type { Point } from '$lib/geometry/point.ts';
import type { Place } from './place.ts';
import type { View } from './view.ts';
import type { ViewName } from './views.ts';

/** Which views a sheet shows: one, or as many as there is room for. */
export type Shown = 'all' | ViewName;

/** A view where it lies on the paper. */
export interface Pane {
  readonly key: ViewName;
  readonly view: View;
  readonly place: Place;
  /** Upper right corner of the frame of a view that stands beside the others, at a scale of its own; null for those. */
  readonly corner: Point | null;
}
