import type { Place } from './place.ts';
import type { Frame } from './sheetLayout.ts';
import type { View } from './view.ts';
import type { ViewName } from './views.ts';

/** Which views a sheet shows: one, or as many as there is room for. */
export type Shown = 'all' | ViewName;

/** A view where it lies on the paper. */
export interface Pane {
  readonly key: ViewName;
  readonly view: View;
  readonly place: Place;
  /** What it has of the sheet, its caption included. */
  readonly frame: Frame;
  /** Whether its name and scale stand at its head. */
  readonly headed: boolean;
}
