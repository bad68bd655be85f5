import { cutterOf } from '$lib/workshop/beam.ts';
import type { BuildChoice, CountSheets } from '$lib/solution/builds.ts';
import { widthRange } from '$lib/solution/widthSpread.ts';
import { capital } from '$lib/project/capital.ts';
import type { Project } from '$lib/project/project.ts';
import { MM_PER_INCH, type LengthUnit } from '$lib/project/units.ts';
import { buildNamed } from '$lib/stand/builds/builds.ts';
import { messageOf } from '$lib/document/messages.ts';
import { countText, formatNumber, lengthText, quantityText, rangeText } from '$lib/views/ui/formatNumber.ts';
import { arrange } from '$lib/workshop/nesting/arrange.ts';
import type { Estimate, Estimates } from '$lib/workshop/estimate.ts';

/** What a build is called where it begins a line. */
export const buildTitle = (name: BuildChoice['build']): string => capital(buildNamed(name).label);

/** One line of the comparison: a figure for each build, null where the build cannot be had. */
export interface ChoiceRow {
  readonly name: string;
  /** Whether it is reckoned from speeds and prices that nobody measured here. */
  readonly estimate: boolean;
  readonly cells: readonly (string | null)[];
}

const NONE = '–';
const MM3_IN_LITRE = 1e6;
const MM_IN_METRE = 1000;
const MM_IN_FOOT = 12 * MM_PER_INCH;
/** A board foot is 144 cubic inches, the measure of solid wood where inches are in use. */
const MM3_IN_BOARD_FOOT = 144 * MM_PER_INCH ** 3;

const wayText = (mm: number, unit: LengthUnit): string =>
  unit === 'mm' ? quantityText(mm / MM_IN_METRE, 1, 'm') : quantityText(mm / MM_IN_FOOT, 0, 'ft');

const woodText = (mm3: number, unit: LengthUnit): string =>
  unit === 'mm' ? quantityText(mm3 / MM3_IN_LITRE, 2, 'l') : quantityText(mm3 / MM3_IN_BOARD_FOOT, 2, 'board ft');

/** The builds side by side, for both stands together. */
export function choiceRows(choices: readonly BuildChoice[], unit: LengthUnit): readonly ChoiceRow[] {
  const row = (name: string, cell: (choice: BuildChoice & { ok: true }) => string, estimate = false): ChoiceRow => ({
    name,
    estimate,
    cells: choices.map((choice) => (choice.ok ? cell(choice) : null)),
  });
  const some = (value: number, text: string): string => (value > 0 ? text : NONE);
  const known = choices.flatMap((choice) => (choice.ok ? [choice.estimates] : []));
  /** A row of what nobody gave the speeds or prices for says nothing: it comes with the first of them. */
  const given = (estimate: (of: Estimates) => Estimate, ...rows: readonly ChoiceRow[]): readonly ChoiceRow[] =>
    known.some((one) => (estimate(one).value ?? 0) > 0) ? rows : [];
  return [
    row('Sheets', ({ sheets, parts }) =>
      parts.length === 0 ? NONE : sheets === null ? 'not laid out' : String(sheets),
    ),
    row('Cut length', ({ figures }) => some(figures.cutLength, wayText(figures.cutLength, unit))),
    ...given(
      ({ cutMinutes }) => cutMinutes,
      row('Cutting', ({ estimates, figures }) => some(figures.cutLength, minutes(estimates.cutMinutes)), true),
    ),
    row('Printed mass', ({ figures }) => some(figures.printedMass, quantityText(figures.printedMass, 2, 'kg'))),
    ...given(
      ({ printMinutes }) => printMinutes,
      row('Printing', ({ estimates, figures }) => some(figures.printedMass, minutes(estimates.printMinutes)), true),
    ),
    row('Solid wood', ({ figures }) => some(figures.solidWood, woodText(figures.solidWood, unit))),
    row('Finished mass', ({ figures }) => quantityText(figures.finishedMass, 2, 'kg')),
    ...given(
      ({ cost }) => cost,
      row('Cost', ({ estimates }) => money(estimates.cost), true),
    ),
    row('Finished width', ({ widths }) => lengthText(widths[1], unit)),
    row('Width uncertainty', ({ plan: { stand } }) =>
      stand.right.widthSpread === null ? NONE : rangeText(widthRange(stand.right.widthSpread), unit),
    ),
    row('Steps', ({ steps }) => countText(steps, 'step', 'steps')),
  ];
}

/** Why each build that cannot be had cannot, with lengths as the project shows them. */
export const refusals = (
  choices: readonly BuildChoice[],
  project: Project,
): readonly { readonly build: BuildChoice['build']; readonly text: string }[] =>
  choices.flatMap((choice) =>
    choice.ok
      ? []
      : [
          {
            build: choice.build,
            text: choice.faults.map((fault) => messageOf(fault, project, project.display)).join('; '),
          },
        ],
  );

const money = ({ value }: Estimate): string => (value === null ? 'not known' : formatNumber(value, 2));

const minutes = ({ value }: Estimate): string => (value === null ? 'not known' : quantityText(value, 0, 'min'));

/** What has to be measured or asked for before every estimate has a value; each thing once. */
export const unknowns = (choices: readonly BuildChoice[]): readonly string[] => [
  ...new Set(
    choices.flatMap((choice) =>
      choice.ok
        ? [choice.estimates.cutMinutes, choice.estimates.printMinutes, choice.estimates.cost].flatMap(
            ({ missing }) => missing,
          )
        : [],
    ),
  ),
];

/** Sheets of each stock by the first arrangement that is found. */
export const countBy =
  (project: Project): CountSheets =>
  (parts) => {
    const laid = arrange(parts, project.stock, cutterOf(project));
    if (!laid.ok) return null;
    const counts: Record<string, number> = {};
    for (const sheet of laid.value) counts[sheet.stock] = (counts[sheet.stock] ?? 0) + 1;
    return counts;
  };
