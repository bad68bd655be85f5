import { frontHandles } from './frontHandles.ts';
import { frontView } from './frontView.ts';
import type { Handle } from './handle.ts';
import { sideHandles, topHandles } from './handles.ts';
import { isoView } from './isoView.ts';
import { floorLevel, type Floor } from './roomFromSide.ts';
import type { SheetSource } from './sheetSource.ts';
import { sideView } from './sideView.ts';
import { topView } from './topView.ts';
import type { View } from './view.ts';

/** One way of looking at a project. */
export interface ViewKind {
  /** On a button. */
  readonly name: string;
  /** Where there is room to say it. */
  readonly title: string;
  readonly draw: (source: SheetSource, floor: Floor) => View;
  /** What can be moved on it. */
  readonly handles: (source: SheetSource, floor: Floor, view: View) => Handle[];
}

/** The one list of views, in the order in which they are offered. */
export const views = {
  top: {
    name: 'Plan',
    title: 'Plan',
    draw: ({ project, layout, layoutIndex, plan }) => topView(project.speaker, layout, layoutIndex, plan),
    handles: topHandles,
  },
  side: {
    name: 'Side',
    title: 'Side view',
    draw: ({ project, layout, layoutIndex, plan, side }, floor) =>
      sideView(project.speaker, layout, layoutIndex, plan, side, floor),
    handles: (source, floor, { extent }) => sideHandles(source, floorLevel(source.layout, floor), extent[3]),
  },
  front: {
    name: 'Front',
    title: 'Front of the loudspeaker',
    draw: ({ project, plan, side }) => frontView(project.speaker, plan, side),
    handles: frontHandles,
  },
  stand: {
    name: 'Stand',
    title: 'Stand, isometric',
    draw: ({ project, plan, side }) => isoView(project.speaker, plan, side),
    handles: () => [],
  },
} as const satisfies Readonly<Record<string, ViewKind>>;

export type ViewName = keyof typeof views;

export const viewNames = Object.keys(views) as readonly ViewName[];
