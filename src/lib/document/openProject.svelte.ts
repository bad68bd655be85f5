import type { Plan } from '$lib/solution/document.ts';
import { levelsByPointer } from '$lib/solution/findings/concerns.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import { countedAt, isEntered } from '$lib/project/counted.ts';
import type { Fault } from '$lib/project/fault.ts';
import { isMirrored } from '$lib/project/mirrored.ts';
import type { Project, SideName } from '$lib/project/project.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import type { LengthDisplay, LengthUnit } from '$lib/project/units.ts';
import { ownerOf } from './fields.ts';
import { messagesByOwner } from './messages.ts';
import { withEdits, type Edit } from './edit.ts';
import { withEntered, withNotEntered } from './markEntered.ts';
import { mirrorEdit, mirrorLeft } from './mirror.ts';
import { wallsKept } from './walls.ts';
import { settle, settleProject, type Settled } from './settle.ts';
import { Watched } from './watched.ts';

/**
 * The project that is open. One document is the truth, all else follows from it; every change goes through `change`, so
 * that a history or a store has one place to listen. An unsound document is kept as typed while the last sound state
 * stays on screen.
 */
export class OpenProject {
  #settled: Settled;
  /**
   * Apart from the rest, and replaced only where they differ: every field and every dimension looks at them.
   */
  #faults: readonly Fault[];
  #display: LengthDisplay;
  readonly #values: Watched;
  #layoutIndex = $state(0);
  #side = $state<SideName>('right');
  #mirrored: boolean;
  /** The field that somebody is in the middle of. */
  #typing = $state<string | null>(null);
  readonly #messages = $derived.by(() =>
    this.#faults.length === 0 ? NO_MESSAGES : messagesByOwner(this.faults, this.draft, this.display),
  );
  /** What the checks that take longer said last, and of which answer. */
  #late = $state.raw<{ readonly of: Plan; readonly findings: readonly Finding[] } | null>(null);
  readonly #levels = $derived.by(() => {
    const { shown } = this;
    const late = this.#late?.of === shown ? this.#late?.findings : undefined;
    return levelsByPointer([...(shown?.checks ?? []), ...(late ?? [])], this.layoutIndex);
  });

  constructor(project: Project) {
    const settled = settleProject(project, 0);
    this.#settled = $state.raw<Settled>(settled);
    this.#faults = $state.raw(settled.faults);
    this.#display = $state.raw(project.display);
    this.#values = new Watched(project);
    this.#mirrored = $state(isMirroredThroughout(project));
  }

  /** The document as typed: plain JSON, sound or not. Never changed in place. */
  get draft(): unknown {
    return this.#settled.draft;
  }

  /** The last sound project. */
  get project(): Project {
    return this.#settled.project;
  }

  /** Whether the last sound project is what is typed. */
  get sound(): boolean {
    return this.#settled.sound;
  }

  /** The last answer for the chosen layout; null when it never had one. */
  get shown(): Plan | null {
    return this.#settled.shown;
  }

  /** What is wrong with the draft, each with the pointer of its value. */
  get faults(): readonly Fault[] {
    return this.#faults;
  }

  /** The same but for the field that is being typed into: half a number is no mistake yet. */
  get toldFaults(): readonly Fault[] {
    const typing = this.#typing;
    return typing === null ? this.#faults : this.#faults.filter(({ pointer }) => ownerOf(pointer) !== typing);
  }

  get layoutIndex(): number {
    return this.#layoutIndex;
  }

  /** The side that the side view and the tables put first. */
  get side(): SideName {
    return this.#side;
  }

  set side(side: SideName) {
    this.#side = side;
  }

  /** Whether an edit of one mark moves the other one too. */
  get mirrored(): boolean {
    return this.#mirrored;
  }

  /** What lengths are shown and typed in. */
  get unit(): LengthUnit {
    return this.#display.length;
  }

  /** How lengths are shown. */
  get display(): LengthDisplay {
    return this.#display;
  }

  /** The draft's value at a pointer; undefined where there is none. */
  at(pointer: string): unknown {
    return this.#values.at(pointer);
  }

  /** What is wrong at the field or group with this pointer, in the display unit; empty when nothing is. */
  messagesAt(pointer: string): readonly string[] {
    return pointer === this.#typing ? NOTHING : (this.#messages.get(pointer) ?? NOTHING);
  }

  /** Says that a field is being typed into: what is wrong there is not told before `finishTyping`. */
  beginTyping(pointer: string): void {
    this.#typing = pointer;
  }

  /** Says that the typing has paused, or the field was left. */
  finishTyping(pointer: string): void {
    if (this.#typing === pointer) this.#typing = null;
  }

  /** Whether the value at a pointer is the user's own; false for one that is to be measured and was not yet. */
  enteredAt(pointer: string): boolean {
    const place = countedAt(pointer);
    return place === null || isEntered(this.at(`${place.thing}/entered`), place.key);
  }

  /** How grave what the checks say of the value with this pointer is; undefined where they say nothing, or only note something. */
  levelAt(pointer: string): 'fault' | 'caution' | undefined {
    return this.#levels.get(pointer);
  }

  /** Takes in what the checks that take longer, those of the sound, say of an answer; forgotten when another one is shown. */
  takeFindings(of: Plan, findings: readonly Finding[]): void {
    this.#late = { of, findings };
  }

  edit(pointer: string, value: unknown): void {
    this.editAll([[pointer, value]]);
  }

  /** Several edits as one step, all of them by the user's hand: what is measured of them counts as entered. */
  editAll(edits: readonly Edit[]): void {
    const all = this.#mirrored ? edits.flatMap((edit) => [edit, ...mirrorEdit(edit)]) : edits;
    this.change((draft) => {
      const edited = withEdits(draft, all);
      return withEntered(withEdits(edited, wallsKept(edited, this.project, all)), pointersOf(all));
    });
  }

  /** Several edits as one step, by an estimate: what is to be measured of them still is. */
  estimateAll(edits: readonly Edit[]): void {
    this.change((draft) => withNotEntered(withEdits(draft, edits), pointersOf(edits)));
  }

  /** The draft turned into another one: the door through which every edit goes. */
  change(turn: (draft: unknown) => unknown): void {
    this.#settle(turn(this.draft));
  }

  /** Another project in place of this one. */
  replace(project: Project): void {
    this.#layoutIndex = 0;
    this.#become(settleProject(project, 0));
    this.#mirrored = isMirroredThroughout(project);
  }

  chooseLayout(index: number): void {
    this.#layoutIndex = index;
    this.change((draft) => draft);
  }

  /** Ties the two marks together, the left one following the right one, or frees them. */
  setMirrored(mirrored: boolean): void {
    this.#mirrored = mirrored;
    if (!mirrored) return;
    const edits = mirrorLeft(this.draft, this.#layoutIndex);
    // What the left one takes over is as measured as it was on the right.
    const measured = pointersOf(edits).filter((pointer) => this.enteredAt(pointer.replace('/left/', '/right/')));
    this.change((draft) => withEntered(withEdits(draft, edits), measured));
  }

  #settle(draft: unknown): void {
    this.#become(settle(draft, this.#layoutIndex, this.#settled));
  }

  #become(settled: Settled): void {
    const { faults, project } = settled;
    this.#settled = settled;
    this.#values.follow(settled.draft);
    if (faults.length > 0 || this.#faults.length > 0) this.#faults = faults;
    if (!sameJson(project.display, this.#display)) this.#display = project.display;
  }
}

const pointersOf = (edits: readonly Edit[]): readonly string[] => edits.map(([pointer]) => pointer);

const NOTHING: readonly string[] = [];
const NO_MESSAGES: ReadonlyMap<string, readonly string[]> = new Map();

const isMirroredThroughout = (project: Project): boolean =>
  project.layouts.every(({ placement }) => isMirrored(placement));
