import type { Point } from '$lib/geometry/point.ts';
import type { Handle } from '$lib/drawing/handle.ts';
import { gripText, spokenHandle } from '$lib/drawing/handleText.ts';
import { gridFor, moved, nudged, type MovedGrip } from '$lib/drawing/moved.ts';
import type { ViewName } from '$lib/drawing/views.ts';
import type { Edit } from '$lib/document/edit.ts';
import { withCarriers } from '$lib/document/standOn.ts';
import type { Layout } from '$lib/project/project.ts';
import type { Gestures } from '$lib/document/gesture.ts';
import type { OpenProject } from '$lib/document/openProject.svelte.ts';
import type { Held } from '$lib/document/stepSize.ts';
import type { Announcer } from './announcer.svelte.ts';

/** A handle that is taken hold of: on which view, and how many pixels a millimetre is there. */
export interface Grasp {
  readonly view: ViewName;
  readonly handle: Handle;
  readonly scale: number;
}

/** What is shown while something is moved. */
export interface Live {
  readonly view: ViewName;
  /** Of the handle. */
  readonly id: string;
  /** Under the pointer, px on the sheet. */
  readonly pointer: Point;
  readonly lines: readonly string[];
  /** Axes on which it has come to a value worth keeping to. */
  readonly aligned: readonly MovedGrip['axis'][];
  /** It cannot stay here, and will not: let go of, it returns to where it last could. */
  readonly refused: boolean;
}

/** What the sheet does around a move: it holds its arrangement still. */
export interface Stillness {
  /** @param view the one that is worked on. */
  hold(view: ViewName): void;
  release(): void;
}

/** A press that goes no further is a click, px. */
const CLICK = 3;
/** How near a value worth keeping to draws a move towards it, px. */
const REACH = 6;

interface Drag {
  readonly grasp: Grasp;
  readonly from: Point;
  readonly wasSound: boolean;
  /** As it was before the drag. */
  readonly layout: Layout | undefined;
  begun: boolean;
  cancelled: boolean;
  /** Where the pointer is now, until the next frame has taken it up. */
  next: { readonly pointer: Point; readonly keys: Held } | null;
  frame: number | null;
  /** The last move after which everything was sound. */
  sound: readonly MovedGrip[];
}

/** Moves things on the drawing, by pointer and by key. Every drag is one gesture; pointer moves become one edit a frame. */
export class Hand {
  #live = $state.raw<Live | null>(null);
  #drag: Drag | null = null;
  #nudging = false;
  readonly #open: OpenProject;
  readonly #gestures: Gestures;
  readonly #sheet: Stillness;
  readonly #announcer: Announcer;

  constructor(open: OpenProject, gestures: Gestures, sheet: Stillness, announcer: Announcer) {
    this.#open = open;
    this.#gestures = gestures;
    this.#sheet = sheet;
    this.#announcer = announcer;
  }

  get live(): Live | null {
    return this.#live;
  }

  /** Takes hold of a handle; false while another one is held. */
  take(grasp: Grasp, from: Point): boolean {
    if (this.#drag) return false;
    this.rest();
    const wasSound = this.#open.faults.length === 0;
    const layout = this.#layout;
    this.#drag = { grasp, from, wasSound, layout, begun: false, cancelled: false, next: null, frame: null, sound: [] };
    return true;
  }

  move(pointer: Point, keys: Held): void {
    const drag = this.#drag;
    if (!drag || drag.cancelled) return;
    drag.next = { pointer, keys };
    drag.frame ??= requestAnimationFrame(() => {
      drag.frame = null;
      this.#take(drag);
    });
  }

  /** Lets go: what was moved stays, as one step. */
  drop(): void {
    const drag = this.#drag;
    if (!drag) return;
    this.#drag = null;
    if (drag.frame !== null) cancelAnimationFrame(drag.frame);
    if (drag.cancelled) return;
    this.#take(drag);
    if (!drag.begun) return;
    if (drag.wasSound && this.#open.faults.length > 0) this.#edit(drag.layout, drag.sound);
    this.#gestures.finish();
    this.#settle();
  }

  /** Puts everything back where it was before the drag, or before the arrow keys. */
  cancel(): void {
    const drag = this.#drag;
    if (drag?.frame) cancelAnimationFrame(drag.frame);
    const begun = drag ? drag.begun && !drag.cancelled : this.#nudging;
    if (drag) drag.cancelled = true;
    this.#nudging = false;
    if (!begun) return;
    this.#gestures.cancel();
    this.#settle();
  }

  /** Moves a handle by an arrow key. Presses in a row are one gesture, until `rest`. False where it does not move that way. */
  nudge({ view, handle }: Grasp, axis: MovedGrip['axis'], by: number): boolean {
    const grip = handle[axis];
    if (!grip || this.#drag) return false;
    if (!this.#nudging) {
      this.#gestures.begin();
      this.#sheet.hold(view);
      this.#nudging = true;
    }
    const value = nudged(grip, by);
    const wasSound = this.#open.faults.length === 0;
    const { draft } = this.#open;
    this.#edit(this.#layout, [{ axis, grip, value, aligned: false }]);
    if (wasSound && this.#open.faults.length > 0) this.#open.change(() => draft);
    else this.#announcer.say(spokenHandle({ ...handle, [axis]: { ...grip, value } }, this.#open.project.display));
    return true;
  }

  /** Ends a row of arrow keys. */
  rest(): void {
    if (!this.#nudging) return;
    this.#nudging = false;
    this.#gestures.finish();
    this.#sheet.release();
  }

  get #layout(): Layout | undefined {
    return this.#open.project.layouts[this.#open.layoutIndex];
  }

  #settle(): void {
    this.#live = null;
    this.#sheet.release();
  }

  /** @param from The layout before the move. */
  #edit(from: Layout | undefined, grips: readonly MovedGrip[]): void {
    const { layoutIndex, mirrored } = this.#open;
    const edits = grips.map(({ grip, value }): Edit => [grip.input, value]);
    this.#open.editAll(from ? withCarriers(from, layoutIndex, edits, mirrored) : edits);
  }

  #take(drag: Drag): void {
    const { next, from, grasp } = drag;
    drag.next = null;
    if (!next) return;
    const [dx, dy] = [next.pointer[0] - from[0], next.pointer[1] - from[1]];
    if (!drag.begun && Math.hypot(dx, dy) < CLICK) return;
    if (!drag.begun) {
      drag.begun = true;
      this.#gestures.begin();
      this.#sheet.hold(grasp.view);
    }
    const { display } = this.#open.project;
    const grips = moved(grasp.handle, [dx / grasp.scale, -dy / grasp.scale], {
      grid: gridFor(display.length, next.keys.altKey),
      aligns: !next.keys.altKey,
      reach: REACH / grasp.scale,
      oneAxis: next.keys.shiftKey,
    });
    this.#edit(drag.layout, grips);
    const isSound = this.#open.faults.length === 0;
    if (isSound) drag.sound = grips;
    const lines = grips.map(({ grip, value }) => gripText(grip, value, display));
    this.#announcer.say(`${grasp.handle.name}: ${lines.join(', ')}`);
    this.#live = {
      view: grasp.view,
      id: grasp.handle.id,
      pointer: next.pointer,
      lines,
      aligned: grips.filter(({ aligned }) => aligned).map(({ axis }) => axis),
      refused: drag.wasSound && !isSound,
    };
  }
}
