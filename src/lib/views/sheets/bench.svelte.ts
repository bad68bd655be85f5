import { lockIndex, lockOf, movePlacement, turnPlacement, type Moved, type Which } from '$lib/workshop/nestMove.ts';
import { pointerTo } from '$lib/project/fault.ts';
import { FIRST_SEED } from '$lib/workshop/nest.ts';
import type { Arrangement, Locked } from '$lib/project/project.ts';
import type { Nesting, Told } from '$lib/state/nesting.svelte.ts';
import type { OpenProject } from '$lib/state/openProject.svelte.ts';
import type { Placement, Sheet } from '$lib/workshop/part.ts';

/** A part in the hand: where it would be put down. */
export interface Carried {
  readonly which: Which;
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  /** Why it would go back to where it was; null where it fits. */
  readonly refusal: string | null;
}

/** What hands do to the sheets: choosing, moving, turning and holding parts. All that stays is written into the project. */
export class SheetBench {
  readonly #open: OpenProject;
  readonly #nesting: Nesting;
  /** After a move, until the next answer is there. */
  #moved = $state.raw<{ readonly of: Told; readonly sheets: readonly Sheet[] } | null>(null);
  #chosen = $state.raw<{ readonly sheet: string; readonly placement: Placement } | null>(null);
  #carried = $state.raw<Carried | null>(null);
  /** What was on show when a part was taken up: better answers wait until it is put down. */
  #frozen = $state.raw<readonly Sheet[] | null>(null);
  #message = $state('');

  constructor(open: OpenProject, nesting: Nesting) {
    this.#open = open;
    this.#nesting = nesting;
  }

  /** What is on show. */
  get sheets(): readonly Sheet[] {
    if (this.#frozen !== null) return this.#frozen;
    const { told } = this.#nesting;
    return this.#moved !== null && this.#moved.of === told ? this.#moved.sheets : (told?.value.sheets ?? []);
  }

  /** Whether the parts on show are those of the project as it stands: only then can hands change anything. */
  get ready(): boolean {
    return this.#open.faults.length === 0 && this.#nesting.isLike(this.#open.shown);
  }

  /** Whether nothing has changed since the last answer. */
  get settled(): boolean {
    return this.#open.faults.length === 0 && this.#nesting.isOf(this.#open.shown);
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
  get message(): string {
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

  isHeld(sheet: Sheet, placement: Placement): boolean {
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

  /** Holds a part where it lies, or lets it go. */
  toggle(which: Which): void {
    const found = this.#at(which);
    if (found === null || !this.ready) return;
    const held = lockIndex(this.locked, found.sheet, found.placement);
    const part = found.placement.part;
    this.#say(held < 0 ? `${part} is held where it lies.` : `${part} is let go.`);
    this.#write(
      held < 0 ? [...this.locked, lockOf(found.sheet, found.placement)] : this.locked.filter((_, i) => i !== held),
    );
  }

  /** Holds every part of a sheet where it lies. */
  holdAll(sheet: Sheet): void {
    if (!this.ready) return;
    const free = sheet.placements.filter((placement) => !this.isHeld(sheet, placement));
    this.#write([...this.locked, ...free.map((placement) => lockOf(sheet, placement))]);
    this.#say('Every part of the sheet is held where it lies.');
  }

  letAllGo(): void {
    this.#write([]);
    this.#say('Nothing is held any more.');
  }

  /** Forgets what could not be held where it was. */
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
      this.#say(`${before.placement.part} goes back: ${moved.refusal.message}.`);
      return false;
    }
    const { told } = this.#nesting;
    const sheet = moved.sheets[moved.which.sheet];
    const placement = sheet?.placements[moved.which.placement];
    if (told === null || sheet === undefined || placement === undefined) return false;
    const held = lockIndex(this.locked, before.sheet, before.placement);
    const others = this.locked.filter((_, i) => i !== held);
    this.#moved = { of: told, sheets: moved.sheets };
    this.#chosen = { sheet: keyOf(sheet), placement };
    this.#write([...others, lockOf(sheet, placement)]);
    this.#say(`${placement.part} is held where you put it; the rest is arranged round it.`);
    return true;
  }

  #at({ sheet, placement }: Which): { readonly sheet: Sheet; readonly placement: Placement } | null {
    const on = this.sheets[sheet];
    const found = on?.placements[placement];
    return on === undefined || found === undefined ? null : { sheet: on, placement: found };
  }

  #say(message: string): void {
    this.#message = message;
  }

  #write(locked: readonly Locked[], seed = this.seed): void {
    this.#open.edit(pointerTo('layouts', this.#open.layoutIndex, 'arrangement'), { seed, locked });
  }

  get #arrangement(): Arrangement {
    return this.#open.shown?.layout.arrangement ?? { seed: FIRST_SEED, locked: [] };
  }

  get #limits() {
    const { told } = this.#nesting;
    return {
      parts: told?.shown.parts ?? [],
      stocks: told?.shown.project.stock ?? [],
      cutter: told?.shown.project.cutter ?? { kerf: 0, taper: 0, spacing: 0, margin: 0 },
    };
  }
}

/** What tells the sheets of one project apart. */
export const keyOf = ({ stock, number, offcut = false }: Sheet): string => JSON.stringify([stock, offcut, number]);

/** mm. The dust of adding and taking off margins. */
const SAME = 1e-6;

const isSame = (a: Placement, b: Placement): boolean =>
  a.part === b.part && Math.abs(a.x - b.x) + Math.abs(a.y - b.y) + Math.abs(a.turn - b.turn) < SAME;
