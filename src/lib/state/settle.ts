import type { Plan } from '$lib/plan/document.ts';
import { planSteps } from '$lib/plan/plan.ts';
import { failure, unforeseen, type Fault, type Result } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';

/** A project with an answer: what is drawn, and what files are made from. */
export interface Shown {
  readonly project: Project;
  readonly layout: Layout;
  readonly layoutIndex: number;
  readonly plan: Plan;
}

/** Where an open project stands after an edit. */
export interface Settled {
  /** The document as typed: plain JSON, sound or not. */
  readonly draft: unknown;
  /** The last draft that was a sound project. */
  readonly project: Project;
  /** Whether that is the draft. */
  readonly sound: boolean;
  /** The last answer for the chosen layout; null when it never had one. */
  readonly shown: Shown | null;
  /** What is wrong with the draft, or why its geometry has no answer. Empty: `shown` is the draft's. */
  readonly faults: readonly Fault[];
}

/** What tells a sound project from any other document. */
export type Check = (draft: unknown) => Result<Project>;

/**
 * What a draft comes to, given where the project stood before: the last sound state outlives an unsound draft. Never throws,
 * whatever the check or the plan does, or an edit would be lost.
 */
export function settle(draft: unknown, layoutIndex: number, before: Settled, check: Check): Settled {
  const checked = safely(() => check(draft));
  const kept = before.shown?.layoutIndex === layoutIndex ? before.shown : null;
  if (!checked.ok) {
    return {
      draft,
      project: before.project,
      sound: false,
      shown: kept ?? answer(before.project, layoutIndex).shown,
      faults: checked.faults,
    };
  }
  const { shown, faults } = answer(checked.value, layoutIndex);
  return { draft, project: checked.value, sound: true, shown: shown ?? kept, faults };
}

/** Where a sound project stands when it opens. */
export function settleProject(project: Project, layoutIndex: number): Settled {
  return { draft: project, project, sound: true, ...answer(project, layoutIndex) };
}

/** What a check says; where it throws, that. */
function safely<Value>(check: () => Result<Value>): Result<Value> {
  try {
    return check();
  } catch (error) {
    return failure(unforeseen(error));
  }
}

type Answer = Pick<Settled, 'shown' | 'faults'>;

const answer = (project: Project, layoutIndex: number): Answer => toTheEnd(answerSteps(project, layoutIndex));

function* answerSteps(project: Project, layoutIndex: number): Generator<undefined, Answer> {
  const layout = project.layouts[layoutIndex];
  if (layout === undefined) return { shown: null, faults: [] };
  try {
    const outcome = yield* planSteps(project, layout);
    return outcome.ok
      ? { shown: { project, layout, layoutIndex, plan: outcome.value }, faults: [] }
      : { shown: null, faults: outcome.faults };
  } catch (error) {
    return { shown: null, faults: [unforeseen(error)] };
  }
}

/**
 * Where a sound project stands when its page comes to life: the answer is worked out while `steps` are taken, or at once
 * when somebody asks for it before.
 */
export class Opening implements Settled {
  readonly draft: unknown;
  readonly project: Project;
  readonly sound = true;
  readonly steps: Iterator<unknown>;
  #answer: Answer | null = null;

  constructor(project: Project) {
    this.draft = project;
    this.project = project;
    this.steps = this.#work();
  }

  get shown(): Shown | null {
    return this.#settle().shown;
  }

  get faults(): readonly Fault[] {
    return this.#settle().faults;
  }

  #settle(): Answer {
    this.#answer ??= answer(this.project, 0);
    return this.#answer;
  }

  *#work(): Generator<undefined, void> {
    const steps = answerSteps(this.project, 0);
    for (let step = steps.next(); this.#answer === null; step = steps.next()) {
      if (step.done) this.#answer = step.value;
      else yield;
    }
  }
}
