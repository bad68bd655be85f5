import { untrack } from 'svelte';
import { dimensionStyle, screenStyle, type DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { lookedAt } from '$lib/drawing/lookedAt.ts';
import { marked } from '$lib/drawing/marked.ts';
import { severalFit, shownOf } from '$lib/drawing/rooms.ts';
import { canWait, detailed, handlesOf, redrawn, sheetOf, textsPlaced, viewGiving } from '$lib/drawing/sheet.ts';
import type { Sheet } from '$lib/drawing/sheet.ts';
import type { Shown as ShownViews } from '$lib/drawing/pane.ts';
import type { ViewName } from '$lib/drawing/views.ts';
import type { Frame } from '$lib/drawing/sheetLayout.ts';
import type { SheetSource } from '$lib/drawing/sheetSource.ts';
import { steadyPanes, steadySheet, stillServes, type DrawnPane } from '$lib/drawing/steady.ts';
import { printScales } from '$lib/files/printSheet.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Gestures } from '$lib/document/gesture.ts';
import type { OpenProject } from '$lib/document/openProject.svelte.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import { Rested } from '$lib/views/ui/rested.svelte.ts';
import { ContainerSize, type Size } from './containerSize.svelte.ts';
import type { Stillness } from './hand.svelte.ts';
import { onPaper, type PaneOnPaper } from './onPaper.ts';
import { PaperZoom } from './paperZoom.svelte.ts';

/** A CSS millimetre, px. */
const MM = 96 / 25.4;
/** As the style sheet has it on paper, mm. */
const PRINTED = { width: 176, height: 170 };
/** On paper a view is drawn at a standard reduction: the largest that fits. */
const atRatio = (most: number): number => MM / (printScales.find((ratio) => MM / ratio <= most) ?? MM / most);

/** Before a window is known, px. */
const SERVED = { width: 900, height: 1100 };

/**
 * What the drawing shows, step by step: the sheet that the numbers are arranged on, its views as they are looked at, and
 * those on paper. Each step makes anew only what has changed.
 */
export class SheetPicture {
  readonly size: ContainerSize;
  readonly paper = new PaperZoom();
  readonly still: Stillness;
  readonly rested: Rested<SheetSource>;
  readonly #open: OpenProject;
  readonly #gestures: Gestures;
  readonly #drawn: () => Plan;
  readonly #fixed: () => boolean;
  /** What somebody asked to see; until then the sheet decides by its size. */
  #asked = $state<ShownViews | null>(null);
  /** The view that gives the value chosen last, where there is room for one view only and it was not the one shown. */
  #followed = $state<ViewName | null>(null);
  /** Name of the layout that is laid over the views; null for none. */
  #over = $state<string | null>(null);
  /** The arrangement that is held still while something is moved or typed into, and the view in which it is. */
  #held = $state.raw<{ readonly sheet: Sheet; readonly view: ViewName } | null>(null);
  /** What was drawn last, to draw no more anew than has changed: no state of its own. */
  #lastSheet: Sheet | null = null;
  #arranged: { readonly sheet: Sheet; readonly shown: ShownViews; readonly frame: Frame } | null = null;
  #lastPanes: readonly DrawnPane[] = [];
  #lastDrawn: readonly PaneOnPaper[] = [];

  readonly #style = $derived.by(() => (this.size.printing ? dimensionStyle(MM) : screenStyle(this.size.width)));
  readonly #frame = $derived.by<Frame>(() => ({ left: 0, top: 0, width: this.size.width, height: this.size.height }));
  readonly #source = $derived.by<SheetSource>(() => {
    const drawn = this.#drawn();
    const { project, layout, layoutIndex } = drawn;
    return { project, layout, layoutIndex, plan: drawn, side: this.#open.side, over: overOf(drawn, this.#over) };
  });
  readonly #fit = $derived.by(() => severalFit(this.#frame, this.#style));
  readonly #shown = $derived.by(() => (this.#fit ? null : this.#followed) ?? shownOf(this.#asked, this.#fit));
  /** Whether the numbers are being changed just now: what is dear to draw and not looked at follows when they rest. */
  readonly #moving = $derived.by(() => this.#gestures.gesturing && this.#source !== this.rested.value);
  readonly #sheet = $derived.by(() => {
    this.#lastSheet = (this.#held ? this.#redraw(this.#held.sheet, this.#held.view) : this.#stays()) ?? this.#arrange();
    return this.#lastSheet;
  });
  readonly #panes = $derived.by(() => {
    const zoom = this.paper.transform;
    const { checks } = this.#source.plan;
    const levelAt = (pointer: string) => this.#open.levelAt(pointer);
    const told = detailed(this.#sheet, zoom.k, this.#style).map((pane) => ({
      ...pane,
      view: this.#fixed() ? lookedAt(marked(pane.view, checks, levelAt)) : marked(pane.view, checks, levelAt),
    }));
    const fresh = textsPlaced(told, zoom, this.#style, this.display).map((pane) => ({
      ...pane,
      handles: this.#fixed() ? [] : handlesOf(pane, this.#source, this.#sheet),
    }));
    this.#lastPanes = steadyPanes(this.#lastPanes, fresh);
    return this.#lastPanes;
  });
  readonly #onPaper = $derived.by(() => {
    this.#lastDrawn = onPaper(this.#lastDrawn, this.#panes, this.#style, this.display, this.#open.side, this.#moving);
    return this.#lastDrawn;
  });

  /**
   * @param drawn what of the project is drawn: its last answer.
   * @param size of the paper until a window is known, px.
   * @param fixed whether it can only be looked at.
   */
  constructor(
    open: OpenProject,
    gestures: Gestures,
    drawn: () => Plan,
    size: Size = SERVED,
    fixed: () => boolean = () => false,
  ) {
    this.#open = open;
    this.#gestures = gestures;
    this.#drawn = drawn;
    this.#fixed = fixed;
    this.size = new ContainerSize(size, PRINTED);
    this.rested = new Rested(() => this.#source);
    this.still = {
      hold: (view) => (this.#held = { sheet: untrack(() => this.#sheet), view }),
      release: () => (this.#held = null),
    };
  }

  get style(): DimensionStyle {
    return this.#style;
  }

  get source(): SheetSource {
    return this.#source;
  }

  get display(): LengthDisplay {
    return this.#open.display;
  }

  /** Names of the layouts that can be laid over the views, and of the one that is; null for none. */
  get others(): readonly string[] {
    const { project, layout } = this.#source;
    return project.layouts.flatMap(({ name }) => (name === layout.name ? [] : [name]));
  }

  get over(): string | null {
    return this.#source.over?.layout.name ?? null;
  }

  set over(name: string | null) {
    this.#over = name;
  }

  /** Whether several views fit at once. */
  get fit(): boolean {
    return this.#fit;
  }

  get shown(): ShownViews {
    return this.#shown;
  }

  get sheet(): Sheet {
    return this.#sheet;
  }

  get panes(): readonly DrawnPane[] {
    return this.#panes;
  }

  get onPaper(): readonly PaneOnPaper[] {
    return this.#onPaper;
  }

  readonly show = (views: ShownViews): void => {
    this.#asked = views;
    this.#followed = null;
  };

  /** Shows the view in which a value is given, where one view is shown and it does not give it. */
  readonly follow = (pointer: string): void => {
    const { sheet, shown } = this;
    if (this.#fit || shown === 'all') return;
    this.#followed = viewGiving(pointer, this.#source, sheet.floor, shown) ?? this.#followed;
  };

  #redraw(still: Sheet, workedOn: ViewName | null): Sheet {
    const last = this.#lastSheet ?? still;
    return this.#moving ? redrawn(this.#source, last, canWait(last, workedOn)) : redrawn(this.#source, still);
  }

  /** While a number is typed: the sheet as it is arranged, for as long as that serves. */
  #stays(): Sheet | null {
    const [last, arranged] = [this.#lastSheet, this.#arranged];
    if (!this.#moving || !last || arranged?.shown !== this.#shown || arranged.frame !== this.#frame) return null;
    const after = this.#redraw(last, null);
    return stillServes(arranged.sheet, after) ? after : null;
  }

  #arrange(): Sheet {
    const [shown, frame] = [this.#shown, this.#frame];
    const sheet = steadySheet(
      this.#lastSheet,
      sheetOf(this.#source, shown, frame, this.#style, this.size.printing ? atRatio : undefined),
    );
    this.#arranged = { sheet, shown, frame };
    return sheet;
  }
}

/** The plan of the layout of a name beside the one that is drawn; null where there is none, or it has none. */
function overOf({ project, layout }: Plan, name: string | null): Plan | null {
  const other = project.layouts.find((one) => one.name === name);
  if (!other || other === layout) return null;
  const planned = plan(project, other, false);
  return planned.ok ? planned.value : null;
}
