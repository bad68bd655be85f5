import type { Circle, Path } from '$lib/geometry/contour.ts';
import { figureFlaw, type FigureFlaw } from '$lib/geometry/figureFlaw.ts';
import type { Fault } from '$lib/project/fault.ts';
import { sideNames, type SideName, type StandSettings } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/body.ts';
import { wallOf } from '$lib/stand/pockets.ts';
import { shownDown } from '$lib/stand/slack.ts';
import type { Part } from '$lib/workshop/part.ts';
import { asMm, asTyped, bare, needs, says, type Sentence } from '$lib/project/sentence.ts';
import { settingAtFault } from './settingAtFault.ts';

/** What both stands are made of. */
export interface Made {
  readonly stands: Readonly<Record<SideName, Pick<StandBody, 'printed' | 'blocks'>>>;
  readonly parts: readonly Part[];
}

/**
 * The first outline that cannot be cut, printed or sawn as drawn, as a fault at the setting without which it could; null
 * when all can. Everything that is made later, sheets, files and pictures, is made of outlines that have passed here.
 *
 * @param remake The same with other settings; null where that has no answer. Asked only where an outline fails.
 */
export function outlineFault(
  made: Made,
  settings: StandSettings,
  remake: (settings: StandSettings) => Made | null,
): Fault | null {
  const found = flawOf(made, settings);
  if (!found) return null;
  const pointer = settingAtFault(settings, (without) => {
    const other = remake(without);
    return other !== null && flawOf(other, without) === null;
  });
  return { pointer, message: says`${sentence(found)}: change this setting, or leave it out` };
}

interface Figure {
  readonly name: string;
  readonly outside: Path | Circle;
  readonly holes: readonly (Path | Circle)[];
}

function flawOf(made: Made, settings: StandSettings): { readonly name: string; readonly flaw: FigureFlaw } | null {
  const least = { path: settings.relief?.web ?? 0, circle: wallOf(settings) };
  for (const { name, outside, holes } of buildTotalsOf(made)) {
    const flaw = figureFlaw(outside, holes, least);
    if (flaw) return { name, flaw };
  }
  return null;
}

function buildTotalsOf({ stands, parts }: Made): Figure[] {
  return [
    ...parts.map(({ name, outside, inside }) => ({ name, outside, holes: inside })),
    ...sideNames.flatMap((side) => [...stands[side].printed.flatMap(printedFigures), ...templateFigures(stands[side])]),
  ];
}

/** The highest level has every hole of those under it. */
function printedFigures({ name, levels, roof }: StandBody['printed'][number]): Figure[] {
  const [outside, ...holes] = levels.at(-1)?.contours ?? [];
  return [outside, roof].flatMap((one) => (one ? [{ name, outside: one, holes }] : []));
}

const templateFigures = ({ blocks }: Pick<StandBody, 'blocks'>): Figure[] =>
  blocks.flatMap(({ name, templates }) => templates.map(({ outline }) => ({ name, outside: outline, holes: [] })));

function sentence({ name, flaw: { what, hole, at, found, least } }: { name: string; flaw: FigureFlaw }): Sentence {
  const line = hole === null ? `an outline of part "${name}"` : `a hole in part "${name}"`;
  const place = says`${bare(asMm(at[0]))}, ${asMm(at[1])}`;
  switch (what) {
    case 'crosses itself':
      return needs(says`${line} that nowhere touches or crosses itself`, says`one that does at ${place}`);
    case 'runs off the part':
      return needs(says`${line} with wood all round it`, says`one that runs off the part at ${place}`);
    case 'too near the outside':
    case 'too near another hole':
      return needs(
        says`${line} with at least ${asTyped(least)} of wood round it`,
        says`${shownDown(found)} at ${place}`,
      );
    case 'not a closed line':
    case 'the wrong way round':
    case 'a wrong area':
      return needs(says`${line} that encloses wood`, says`one that does not at ${place}`);
  }
}
