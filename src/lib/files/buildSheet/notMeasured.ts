import { countedAt } from '$lib/project/counted.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { measuredOf, notEntered } from '$lib/project/measured.ts';
import type { Project } from '$lib/project/project.ts';
import { list, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** That some values are still the example's or default sizes, and which ones: whoever cuts may not have typed them. */
export function notMeasured({ plan: { project, layoutIndex } }: Subject): readonly Section[] {
  const { entered, of } = measuredOf(project, layoutIndex);
  if (entered === of) return [];
  const byThing = new Map<string, string[]>();
  for (const pointer of notEntered(project, layoutIndex)) {
    const thing = thingAt(project, pointer);
    byThing.set(thing, [...(byThing.get(thing) ?? []), valueName(pointer)]);
  }
  return [
    {
      id: 'not-measured',
      title: 'Not measured yet',
      blocks: [
        text(
          `Caution: ${entered} of ${of} values measured. The others are the example’s or default sizes, and the stands made from them will fit no other desk. Measure before you cut:`,
        ),
        list([...byThing].map(([thing, values]) => `${thing}: ${values.join('; ')}`)),
      ],
    },
  ];
}

/** Of what there is a list instead of a field: what is not answered yet is whether it has entries. */
const QUESTIONS: Readonly<Record<string, string>> = {
  monitors: 'whether there are any',
  crossovers: 'crossovers',
  walls: 'gap to the wall',
  points: 'corners',
};

/** What a value is called in the form, as part of a sentence. */
function valueName(pointer: string): string {
  const label =
    fieldTable[pointer.replaceAll(/\/\d+(?=\/)/g, '/*')]?.label ?? QUESTIONS[pointer.split('/').at(-1) ?? ''];
  return (label ?? pointer).replace(/^\p{Lu}/u, (first) => first.toLowerCase());
}

/** The thing a value belongs to, by its own name where it has one. */
function thingAt({ speaker, stock }: Project, pointer: string): string {
  const { kind, key } = countedAt(pointer) ?? {};
  const place = Number(/\/(\d+)\/[^\d]*$/.exec(pointer)?.[1] ?? 0);
  switch (kind) {
    case 'driver':
      return `Driver “${speaker.drivers[place]?.name ?? ''}”`;
    case 'crossover':
      return `Crossover of ${speaker.crossovers[place]?.between.join(' and ') ?? ''}`;
    case 'stock':
      return `Board “${stock[place]?.name ?? ''}”`;
    case 'monitor':
      return `Screen ${place + 1}`;
    case 'layout':
      return LAYOUT[key?.split('/')[0] ?? ''] ?? 'Layout';
    default:
      return 'Cabinet';
  }
}

const LAYOUT: Readonly<Record<string, string>> = {
  desk: 'Desk',
  room: 'Desk',
  listener: 'Listener',
  placement: 'Marks',
  monitors: 'Screens',
};
