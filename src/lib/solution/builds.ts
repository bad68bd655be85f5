import type { Fault } from '$lib/project/fault.ts';
import { printerOf } from '$lib/project/printer.ts';
import { sideNames, type Layout, type Project } from '$lib/project/project.ts';
import type { BuildName, BuildTotals } from '$lib/stand/body.ts';
import { builds } from '$lib/stand/builds/builds.ts';
import { estimate, type Estimates } from '$lib/workshop/estimate.ts';
import type { Part } from '$lib/workshop/part.ts';
import { distinct, type Words } from '$lib/project/sentence.ts';
import type { Plan } from './document.ts';
import { plan } from './plan.ts';

/** One build of a layout's two stands: what it takes, or why it cannot be had. */
export type BuildChoice = { readonly build: BuildName; readonly chosen: boolean } & (
  | {
      readonly ok: true;
      /** Of the layout with this build. */
      readonly plan: Plan;
      /** Of both stands. */
      readonly figures: BuildTotals;
      /** Finished width, as built, of the left and the right stand. */
      readonly widths: readonly [number, number];
      /** How many steps the glue-up of one stand takes. */
      readonly steps: number;
      readonly parts: readonly Part[];
      /** Sheets of all stocks; null when nobody counted, or they have no answer. */
      readonly sheets: number | null;
      readonly estimates: Estimates;
      readonly notes: readonly Words[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] }
);

/** Sheets of each stock that parts take, by its name; null when they cannot be laid. */
export type CountSheets = (parts: readonly Part[]) => Readonly<Record<string, number>> | null;

/**
 * Every build of a layout beside the others, the same aim and the same details. Not part of the plan: it costs a plan a
 * build, and an arrangement of sheets where they are to be counted.
 *
 * @param countSheets Left out, sheets and cost stay unknown.
 */
export const compareBuilds = (
  project: Project,
  layout: Layout,
  countSheets: CountSheets = () => null,
): readonly BuildChoice[] => builds.map(({ name }) => choiceOf(project, layout, name, countSheets));

function choiceOf(project: Project, layout: Layout, build: BuildName, countSheets: CountSheets): BuildChoice {
  const other: Layout = { ...layout, stand: { ...layout.stand, build } };
  const planned = plan({ ...project, layouts: project.layouts.map((one) => (one === layout ? other : one)) }, other);
  const head = { build, chosen: layout.stand.build === build };
  if (!planned.ok) return { ...head, ok: false, faults: planned.faults };
  const { stand, parts } = planned.value;
  const counted = parts.length === 0 ? {} : countSheets(parts);
  const printed = sideNames.flatMap((side) => stand[side].printed);
  const solidWood: Record<string, number> = {};
  for (const { stock, figures } of sideNames.map((side) => stand[side])) {
    solidWood[stock] = (solidWood[stock] ?? 0) + figures.solidWood;
  }
  const sheets = counted && Object.values(counted).reduce((sum, count) => sum + count, 0);
  return {
    ...head,
    ok: true,
    plan: planned.value,
    figures: together(stand.left.figures, stand.right.figures),
    widths: [stand.left.width, stand.right.width],
    steps: Math.max(stand.left.steps.length, stand.right.steps.length),
    parts,
    sheets,
    estimates: estimate({ parts, printed, sheets: counted, solidWood }, project.stock, printerOf(project)),
    notes: distinct(sideNames.flatMap((side) => stand[side].notes)),
  };
}

const together = (a: BuildTotals, b: BuildTotals): BuildTotals => ({
  cutLength: a.cutLength + b.cutLength,
  printedVolume: a.printedVolume + b.printedVolume,
  printedMass: a.printedMass + b.printedMass,
  solidWood: a.solidWood + b.solidWood,
  finishedMass: a.finishedMass + b.finishedMass,
});
