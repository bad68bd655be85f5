import { speedOfSound } from '$lib/acoustics/air.ts';
import { sourceOf, type Source } from '$lib/acoustics/field.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { asStood, type StoodSpeaker } from '$lib/project/stood.ts';
import { plan } from '$lib/solution/plan.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { solutionOf } from '$lib/solution/solve.ts';
import { aimKernel, aimPair, type AimKernel, type GeneralPair } from './aimKernel.ts';
import { candidatesOf, type Ask } from './ask.ts';
import { editsAt } from './editsAt.ts';
import { edited, withEdits, type Change } from './input.ts';
import { measureOf, placesOf, type Aimed, type Measure, type Places } from './measure.ts';

/**
 * Every candidate of an ask, one at a time, worked out no further than it is asked: by the kernel, which takes a
 * microsecond; by the general solver; and last as a whole plan.
 */
export class Candidates {
  readonly #project: Project;
  readonly #speaker: StoodSpeaker;
  readonly #layout: Layout;
  readonly #ask: Pick<Ask, 'free'>;
  readonly #at: number;
  /** One for each combination of free rules. */
  readonly #kernels: readonly (AimKernel | null)[];
  readonly #before: Places;
  /** Of sound in the layout as it is, m/s. */
  readonly #speed: number;
  #source: { readonly of: number; readonly source: Source } | null = null;
  /** Of the candidate that is looked at: its numbers, written over by the next one. */
  readonly #values: number[];
  #index = 0;
  #edits: readonly Change[] | null = null;
  #changed: Layout | null = null;
  #aimed: Aimed | null = null;
  #general: GeneralPair | null | undefined;
  #solution: Solution | null | undefined;
  readonly #known = new Map<Measure, number | null | undefined>();

  constructor(project: Project, layout: Layout, ask: Pick<Ask, 'free'>) {
    this.#project = project;
    this.#speaker = asStood(project.speaker);
    this.#layout = layout;
    this.#ask = ask;
    this.#at = project.layouts.indexOf(layout);
    const pointers = editsAt({ free: ask.free.filter(({ rules }) => rules === null) }, 0).map(({ pointer }) => pointer);
    const free = ask.free.filter(({ rules }) => rules !== null);
    this.#kernels = Array.from({ length: candidatesOf({ free }) }, (_, index) =>
      aimKernel(this.#speaker, withEdits(layout, editsAt({ free }, index)), pointers),
    );
    this.#before = placesOf(layout);
    this.#speed = speedOfSound(layout.air.temperature);
    this.#values = pointers.map(() => 0);
  }

  /** Looks at another candidate. False where it cannot be aimed. */
  turnTo(index: number): boolean {
    this.#index = index;
    this.#edits = null;
    this.#changed = null;
    this.#general = undefined;
    this.#solution = undefined;
    if (this.#known.size > 0) this.#known.clear();
    const kernel = this.#kernels[this.#turnNumbers(index)];
    if (!kernel) {
      this.#aimed = null;
      return this.#pair() !== null;
    }
    const pair = kernel.aim(this.#values);
    if (!pair) return false;
    // A kernel writes over the same pair each time.
    if (this.#aimed?.sides !== pair.sides) this.#aimed = this.#aimedBy(pair, this.#speed);
    return true;
  }

  get edits(): readonly Change[] {
    return (this.#edits ??= editsAt(this.#ask, this.#index));
  }

  /** Of a measure, within the kernel's 1e-9; null where it has no answer, undefined where there is no plan. */
  value(measure: Measure): number | null | undefined {
    return measure.needs === 'aim' && this.#aimed ? measure.of(this.#aimed) : this.exact(measure);
  }

  /** The same to the last digit, as the plan has it. */
  exact(measure: Measure): number | null | undefined {
    if (this.#known.has(measure)) return this.#known.get(measure);
    const value = this.#exact(measure);
    this.#known.set(measure, value);
    return value;
  }

  /** Whether the project with it is a sound one that has a plan. */
  get isSound(): boolean {
    return this.#whole() !== null && edited(this.#project, this.#layout, this.edits).ok;
  }

  #exact(measure: Measure): number | null | undefined {
    if (measure.needs === 'aim' || measure.needs === 'bodies' || measure.needs === 'heard') {
      const pair = this.#pair();
      if (!pair) return undefined;
      const layout = this.#layoutNow();
      const speed = speedOfSound(layout.air.temperature);
      if (measure.needs === 'aim') return measure.of(this.#aimedBy(pair, speed));
      const [head, sides] = [pair.heads[0], pair.poses];
      if (measure.needs === 'bodies') return measure.of({ layout, head, sides });
      const speaker = this.#speaker;
      return measure.of({ speaker, source: this.#sourceAt(speed), layout, head, speedOfSound: speed, sides });
    }
    const whole = this.#whole();
    return whole ? measureOf(measure, whole, this.#layout) : undefined;
  }

  #aimedBy({ heads, sides }: Pick<Aimed, 'heads' | 'sides'>, speedOfSound: number): Aimed {
    return { heads, sides, speedOfSound, before: this.#before };
  }

  /** Kept from candidate to candidate: only the air changes it. */
  #sourceAt(speed: number): Source {
    if (this.#source?.of !== speed) this.#source = { of: speed, source: sourceOf(this.#speaker, speed) };
    return this.#source.source;
  }

  #layoutNow(): Layout {
    return (this.#changed ??= withEdits(this.#layout, this.edits));
  }

  #pair(): GeneralPair | null {
    if (this.#general === undefined) this.#general = aimPair(this.#project.speaker, this.#layoutNow());
    return this.#general;
  }

  #whole(): Solution | null {
    if (this.#solution !== undefined) return this.#solution;
    // Not checked yet: every number is in its own range, and only what would come in is checked as a whole.
    const changed = this.#layoutNow();
    const made = plan({ ...this.#project, layouts: this.#project.layouts.with(this.#at, changed) }, changed, false);
    return (this.#solution = made.ok ? solutionOf(made.value) : null);
  }

  /** Sets the numbers, as `editsAt` does but without new objects; which combination of rules goes with them. */
  #turnNumbers(index: number): number {
    let rest = index;
    let at = 0;
    let [rules, combinations] = [0, 1];
    for (const one of this.#ask.free) {
      const digit = rest % one.count;
      rest = (rest - digit) / one.count;
      if (one.rules) {
        rules += digit * combinations;
        combinations *= one.count;
        continue;
      }
      const value = one.from + digit * one.step;
      this.#values[at++] = value;
      if (one.mirror) this.#values[at++] = one.pointer.endsWith('x') ? -value : value;
    }
    return rules;
  }
}
