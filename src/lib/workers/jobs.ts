import { headMap, type HeadMap, type HeadPlane } from '$lib/acoustics/headMap.ts';
import type { Commas } from '$lib/files/response/columns.ts';
import { readKept, type KeptReading } from '$lib/files/response/readKept.ts';
import { hearSteps, type HeardAnswer } from '$lib/proof/heard/heard.ts';
import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import { suggestionSteps } from '$lib/solution/findings/suggest.ts';
import type { TriedSuggestion } from '$lib/solution/findings/suggestion.ts';
import { sureTrials, type SureTrials } from '$lib/solution/sureTrials.ts';
import { listeningAreaSteps, type ListeningAreaPlan } from '$lib/solution/listeningArea.ts';
import { hearingOf } from '$lib/solution/headVoices.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import type { SoundPlan } from '$lib/solution/soundDocument.ts';
import { compareSteps, type Comparison } from '$lib/study/compare.ts';
import { comparedBy, measuresNamed } from '$lib/study/measures.ts';
import { faultLine, success, type Result } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { readAsk } from '$lib/study/ask.ts';
import { placeExisting, type Placing } from '$lib/study/placeExisting.ts';
import type { PlaceAsk } from '$lib/study/placing/ask.ts';
import type { AskDocument } from '$lib/study/questions.ts';
import type { Part } from '$lib/study/found.ts';
import { searchSteps } from '$lib/study/search.ts';
import { sweepSteps, type Sweep, type SweepRequest } from '$lib/study/sweep.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { nest, type Nested, type NestOptions } from '$lib/workshop/nesting/nest.ts';

/** What a job is about. */
export interface Subject {
  readonly project: Project;
  readonly layoutIndex: number;
}

/** Findings of the sound and the seats; and suggestions by code, for all findings, null until they have been tried. */
export interface SoundFindings {
  readonly findings: readonly Finding[];
  readonly suggestions: ReadonlyMap<FindingCode, TriedSuggestion> | null;
}

/** Some layouts of a project, by their places in it. */
export interface ComparedSubject {
  readonly project: Project;
  readonly chosen: readonly number[];
  /** Whether by the sheets alone, which take seconds a layout; else by all but those. */
  readonly sheets: boolean;
}

/** Every job that runs off the page's own thread: what it is asked, and what it answers. */
export interface Jobs {
  readonly findings: { input: Subject; answer: SoundFindings };
  readonly sound: { input: Subject; answer: SoundPlan };
  /** How far the head may move from every seat. */
  readonly 'listening-area': { input: Subject; answer: ListeningAreaPlan };
  /** One map of head positions. */
  readonly slice: { input: Subject & { readonly where: HeadPlane }; answer: HeadMap };
  /** A measured response of a file's bytes. */
  readonly response: {
    input: { readonly bytes: Uint8Array; readonly commas: Commas | null };
    answer: KeptReading;
  };
  /** The measured responses of a layout, each against its prediction. */
  readonly heard: { input: Subject; answer: HeardAnswer };
  /** How far axes may pass the head, by trials. */
  readonly sure: { input: Subject; answer: SureTrials | null };
  /** How the parts lie on their sheets; or why they do not. */
  readonly sheets: { input: Subject; answer: Result<Nested> };
  /** Layouts side by side: first what is quickly known. */
  readonly compare: { input: ComparedSubject; answer: Comparison };
  /** Where stands that exist can be put. */
  readonly place: { input: Subject & { readonly ask: PlaceAsk }; answer: Placing };
  /** One worker's part of a search. */
  readonly search: { input: SearchInput; answer: Part };
  /** One number of the layout over a range; measures by their names. */
  readonly sweep: {
    input: Subject & Omit<SweepRequest, 'of'> & { readonly of: readonly string[] };
    answer: Result<Sweep>;
  };
}

export interface SearchInput extends Subject {
  /** As its file has it; known to be one of the layout. */
  readonly ask: AskDocument;
  readonly seed: number;
  readonly worker: number;
  /** Workers that share the search. */
  readonly of: number;
}

export type JobName = keyof Jobs;
export type Input<Name extends JobName> = Jobs[Name]['input'];
export type JobAnswer<Name extends JobName> = Jobs[Name]['answer'];

/** Between two steps: how much of a job is done, 0…1, or a first answer that a better one follows. */
export type Step<Answer> = { readonly share: number } | { readonly answer: Answer };

/** A job in steps of some milliseconds, so that a newer question of the same kind can take its place between two of them. */
export const jobs: {
  readonly [Name in JobName]: (input: Input<Name>) => Generator<Step<JobAnswer<Name>>, JobAnswer<Name>>;
} = {
  *findings(subject) {
    const solution = solutionOf(subject);
    const findings = solution.findings.filter((finding) => !solution.checks.includes(finding));
    yield { answer: { findings, suggestions: null } };
    return { findings, suggestions: yield* shares(suggestionSteps(solution, solve)) };
  },
  *sound(subject) {
    const solution = solutionOf(subject);
    yield { answer: soundOf(solution.project, solution.layout, solution, { bands: false }) };
    return solution.sound;
  },
  *'listening-area'(subject) {
    const solution = solutionOf(subject);
    return yield* shares(listeningAreaSteps(solution.project, solution.layout, solution));
  },
  *slice({ where, ...subject }) {
    return headMap(hearingOf(subject.project, solutionOf(subject)), where);
  },
  *response({ bytes, commas }) {
    return yield* shares(readKept(bytes, commas));
  },
  *heard(subject) {
    return yield* shares(hearSteps(solutionOf(subject)));
  },
  *sure({ project, layoutIndex }) {
    return yield* shares(sureTrials(project, layoutAt(project, layoutIndex)));
  },
  sheets: (subject) => sheetSteps(subject),
  *place({ project, layoutIndex, ask }) {
    return placeExisting(project, layoutAt(project, layoutIndex), ask);
  },
  *search({ project, layoutIndex, ask, seed, worker, of }) {
    const layout = layoutAt(project, layoutIndex);
    const read = readAsk(ask, layout);
    if (!read.ok) throw new Error(read.faults.map(faultLine).join('; '));
    return yield* searchSteps(project, layout, read.value, seed, { worker, of });
  },
  compare: ({ project, chosen, sheets }) =>
    compareSteps(
      project,
      chosen.map((index) => layoutAt(project, index)),
      comparedBy.filter(({ needs }) => (needs === 'sheets') === sheets),
    ),
  *sweep({ project, layoutIndex, of, ...request }) {
    const by = measuresNamed(of, 'of');
    if (!by.ok) return by;
    return yield* sweepSteps(project, layoutAt(project, layoutIndex), { ...request, of: by.value });
  },
};

/** Nesting as the project wants it, from its own seed round what it locks. `effort`: see `NestOptions`, and its default. */
export function* sheetSteps(
  { project, layoutIndex }: Subject,
  effort: Pick<NestOptions, 'budget'> = {},
): Generator<Step<Result<Nested>>, Result<Nested>> {
  const layout = layoutAt(project, layoutIndex);
  const outcome = solve(project, layout);
  if (!outcome.ok) return outcome;
  const options = { ...layout.arrangement, ...effort };
  const steps = nest(outcome.value.parts, project.stock, cutterOf(project), options);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield step.value.kind === 'better' ? { answer: success(step.value.nested) } : { share: step.value.share };
  }
}

function* shares<Value>(steps: Generator<number, Value>): Generator<{ readonly share: number }, Value> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { share: step.value };
  }
}

/** Throws where the project has no answer: nobody asks about the sound of one. */
function solutionOf({ project, layoutIndex }: Subject): Solution {
  const outcome = solve(project, layoutAt(project, layoutIndex));
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  return outcome.value;
}

function layoutAt(project: Project, index: number): Layout {
  const layout = project.layouts[index];
  if (layout === undefined) throw new RangeError(`expected the place of a layout, got ${index}`);
  return layout;
}
