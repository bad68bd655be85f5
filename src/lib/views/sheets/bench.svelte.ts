import {
  lockIndex,
  lockOf,
  movePlacement,
  turnPlacement,
  type Moved,
  type Which,
} from '$lib/workshop/nesting/nestMove.ts';
import { pointerTo } from '$lib/project/fault.ts';
import { MOST_LOCKED } from '$lib/project/limits.ts';
import { FIRST_SEED } from '$lib/workshop/nesting/nest.ts';
import type { Arrangement, Locked } from '$lib/project/project.ts';
import type { OpenProject } from '$lib/document/openProject.svelte.ts';
import type { Placement, Sheet } from '$lib/workshop/part.ts';
import { says, type Words } from '$lib/project/sentence.ts';
import type { SheetSearch } from '$lib/workers/sheetSearch.svelte.ts';
import type { Nested } from '$lib/workshop/nesting/nest.ts';

/** A part in the hand: where it would be put down. */
export interface Carried {
  readonly which: Which;
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  /** Why it would go back to where it was; null where it fits. */
  readonly refusal: Words | null;
}

/** What hands do to the sheets: choosing, moving, turning and locking parts. All that stays is written into the project. */
export class SheetBench {
  readonly #open: OpenProject;
  readonly #search: SheetSearch;
  /** After a move, until the next answer is there. */
  #moved = $state.raw<{ readonly of: Nested; readonly sheets: readonly Sheet[] } | null>(null);
  #chosen = $state.raw<{ readonly sheet: string; readonly placement: Placement } | null>(null);
  #carried = $state.raw<Carried | null>(null);
  /** What was on show when a part was taken up: better answers wait until it is put down. */
  #frozen = $state.raw<readonly Sheet[] | null>(null);
  #message = $state.raw<Words>('');

  constructor(open: OpenProject, search: SheetSearch) {
    this.#open = open;
    this.#search = search;
  }

  /** What is on show. */
  get sheets(): readonly Sheet[] {
    if (this.#frozen !== null) return this.#frozen;
    const nested = this.#search.found?.nested;
    return this.#moved !== null && this.#moved.of === nested ? this.#moved.sheets : (nested?.sheets ?? []);
  }

  /** Whether the parts on show are those of the project as it stands: only then can hands change anything. */
  get ready(): boolean {
    return this.#open.faults.length === 0 && this.#search.isLike(this.#open.shown);
  }

  /** Whether nothing has changed since the last answer. */
  get settled(): boolean {
    return this.#open.faults.length === 0 && this.#search.isOf(this.#open.shown);
  }

  get locked(): readonly Locked[] {
    return this.#arrangement.locked;
  }

  get seed(): number {
    return this.#arrangement.seed;
  }

  get carried(): Carried | null {
    return this.#carried;
  }

  /** What the last thing done came to. */
  get message(): Words {
    return this.#message;
  }

  get chosen(): Which | null {
    const chosen = this.#chosen;
    if (chosen === null) return null;
    const sheet = this.sheets.findIndex((one) => keyOf(one) === chosen.sheet);
    const placement = this.sheets[sheet]?.placements.findIndex((one) => isSame(one, chosen.placement)) ?? -1;
    return placement < 0 ? null : { sheet, placement };
  }

  choose(which: Which): void {
    const found = this.#at(which);
    this.#chosen = found === null ? null : { sheet: keyOf(found.sheet), placement: found.placement };
  }

  isLocked(sheet: Sheet, placement: Placement): boolean {
    return lockIndex(this.locked, sheet, placement) >= 0;
  }

  take(which: Which): void {
    const found = this.#at(which);
    if (found === null || !this.ready) return;
    this.choose(which);
    this.#frozen = this.sheets;
    this.#carried = { which, sheet: which.sheet, x: found.placement.x, y: found.placement.y, refusal: null };
  }

  /** Carries the part in the hand over a place: its origin at (x, y) mm of a sheet. */
  carry(sheet: number, x: number, y: number): void {
    const carried = this.#carried;
    if (carried === null) return;
    const moved = movePlacement(this.sheets, carried.which, { sheet, x, y }, this.#limits);
    this.#carried = { ...carried, sheet, x, y, refusal: moved.ok ? null : moved.refusal.message };
  }

  /** Puts the part down where it is held, if it fits there; else it goes back. True when it stays. */
  drop(): boolean {
    const carried = this.#carried;
    const before = carried === null ? null : this.#at(carried.which);
    const { sheets, ready } = this;
    this.putBack();
    if (carried === null || before === null || !ready) return false;
    const { which, sheet, x, y } = carried;
    if (sheet === which.sheet && x === before.placement.x && y === before.placement.y) return false;
    return this.#take(before, movePlacement(sheets, which, { sheet, x, y }, this.#limits));
  }

  /** Puts the part in the hand back. */
  putBack(): void {
    this.#carried = null;
    this.#frozen = null;
  }

  /** Turns a part to the next turn that the grain allows, if it fits like that. */
  turn(which: Which): boolean {
    const before = this.#at(which);
    if (before === null || !this.ready) return false;
    return this.#take(before, turnPlacement(this.sheets, which, this.#limits));
  }

  /** Locks a part where it lies, or unlocks it. */
  toggle(which: Which): void {
    const found = this.#at(which);
    if (found === null || !this.ready) return;
    const at = lockIndex(this.locked, found.sheet, found.placement);
    const part = found.placement.part;
    this.#say(at < 0 ? `${part} is locked where it lies.` : `${part} is unlocked.`);
    this.#write(
      at < 0 ? [...this.locked, lockOf(found.sheet, found.placement)] : this.locked.filter((_, i) => i !== at),
    );
  }

  /** Locks every part of a sheet where it lies. */
  lockSheet(sheet: Sheet): void {
    if (!this.ready) return;
    const free = sheet.placements.filter((placement) => !this.isLocked(sheet, placement));
    this.#write([...this.locked, ...free.map((placement) => lockOf(sheet, placement))]);
    this.#say('Every part of the sheet is locked where it lies.');
  }

  /** Whether all parts on show can be locked: a project locks no more than so many. */
  get canLockAll(): boolean {
    return this.ready && this.sheets.reduce((sum, { placements }) => sum + placements.length, 0) <= MOST_LOCKED;
  }

  /**
   * Stops the search, and locks every part where it lies: from then on these are the sheets of the project, wherever it is
   * opened.
   */
  keepAll(): void {
    if (!this.canLockAll) return;
    this.#search.stop();
    this.#write(this.sheets.flatMap((sheet) => sheet.placements.map((placement) => lockOf(sheet, placement))));
    this.#say('Every part is locked where it lies.');
  }

  unlockAll(): void {
    this.#write([]);
    this.#say('Nothing is locked any more.');
  }

  /** Forgets what could not be locked where it was. */
  forget(indices: readonly number[]): void {
    this.#write(this.locked.filter((_, i) => !indices.includes(i)));
  }

  /** Another start for the search, kept in the project. */
  reseed(): void {
    this.#write(this.locked, this.seed + 1);
  }

  /** Takes a move up into the project and onto the page; says why when it was refused. */
  #take(before: { readonly sheet: Sheet; readonly placement: Placement }, moved: Moved): boolean {
    if (!moved.ok) {
      this.#say(says`${before.placement.part} goes back: ${moved.refusal.message}.`);
      return false;
    }
    const { found } = this.#search;
    const sheet = moved.sheets[moved.which.sheet];
    const placement = sheet?.placements[moved.which.placement];
    if (found === null || sheet === undefined || placement === undefined) return false;
    const at = lockIndex(this.locked, before.sheet, before.placement);
    const others = this.locked.filter((_, i) => i !== at);
    this.#moved = { of: found.nested, sheets: moved.sheets };
    this.#chosen = { sheet: keyOf(sheet), placement };
    this.#write([...others, lockOf(sheet, placement)]);
    this.#say(`${placement.part} is locked where you put it; the rest is arranged round it.`);
    return true;
  }

  #at({ sheet, placement }: Which): { readonly sheet: Sheet; readonly placement: Placement } | null {
    const on = this.sheets[sheet];
    const found = on?.placements[placement];
    return on === undefined || found === undefined ? null : { sheet: on, placement: found };
  }

  #say(message: Words): void {
    this.#message = message;
  }

  #write(locked: readonly Locked[], seed = this.seed): void {
    this.#open.edit(pointerTo('layouts', this.#open.layoutIndex, 'arrangement'), { seed, locked });
  }

  get #arrangement(): Arrangement {
    return this.#open.shown?.layout.arrangement ?? { seed: FIRST_SEED, locked: [] };
  }

  get #limits() {
    const of = this.#search.found?.of;
    return {
      parts: of?.parts ?? [],
      stocks: of?.project.stock ?? [],
      cutter: of?.project.cutter ?? { kerf: 0, taper: 0, spacing: 0, margin: 0 },
    };
  }
}

/** What tells the sheets of one project apart. */
export const keyOf = ({ stock, number, offcut = false }: Sheet): string => JSON.stringify([stock, offcut, number]);

/** mm. The dust of adding and taking off margins. */
const SAME = 1e-6;

const isSame = (a: Placement, b: Placement): boolean =>
  a.part === b.part && Math.abs(a.x - b.x) + Math.abs(a.y - b.y) + Math.abs(a.turn - b.turn) < SAME;
