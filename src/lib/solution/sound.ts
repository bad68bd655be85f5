import { cellPowers } from '$lib/acoustics/cells.ts';
import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { EARLY } from '$lib/acoustics/early.ts';
import type { Field } from '$lib/acoustics/field.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { DESK_KNOWN_FROM, leftOut } from '$lib/acoustics/leftOut.ts';
import { notchesOf } from '$lib/acoustics/notches.ts';
import { evenedAtDesign } from '$lib/acoustics/onAxis.ts';
import { remediesFor } from '$lib/acoustics/remedies.ts';
import { responseOf } from '$lib/acoustics/response.ts';
import { baffleStep, bodyCorner } from '$lib/acoustics/shadow.ts';
import type { RoomSurface } from '$lib/acoustics/surface.ts';
import { together } from '$lib/acoustics/wave.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import { bandSteps, type Bands, type Stood } from './soundBand.ts';
import { once } from '$lib/project/once.ts';
import { asStood } from '$lib/project/stood.ts';
import { crossoverSound } from '$lib/solution/sound/crossovers.ts';
import { driverSound } from '$lib/solution/sound/drivers.ts';
import { earlySound } from '$lib/solution/sound/early.ts';
import { heardOf, standingOf } from '$lib/solution/sound/heard.ts';
import { reflectionSound } from '$lib/solution/sound/reflections.ts';
import type { ResponsePlan, SideSound, SoundPlan } from './soundDocument.ts';

export interface SoundOptions {
  /** Whether the step of the baffle counts in the responses; off by default, as it is no more than a hint. */
  readonly baffleStep?: boolean;
  /** Whether it is worked out where the responses may lie, on by default: all of the sound over again some sixteen times. */
  readonly bands?: boolean;
}

/**
 * What a layout's geometry does to the sound at the head: crossovers, directivity, reflections and the response of each
 * loudspeaker and of both. `plan` must be of this project and layout. Pure; a few milliseconds at
 * most.
 */
export function soundOf(project: Project, layout: Layout, plan: Stood['plan'], options: SoundOptions = {}): SoundPlan {
  const speaker = asStood(project.speaker);
  const { speedOfSound: speed, head } = plan;
  const standing = standingOf(speaker, layout, plan);
  const { source } = standing;
  const { surfaces, sides } = heardOf(standing);
  const point = designPointOf(speaker);
  const known = point !== null;
  const corner = bodyCorner(speaker.width, speed);
  const evened = once(() => {
    const even = evenedAtDesign(speaker, source, speed);
    if (options.baffleStep) frequencies.forEach((f, i) => (even[i] = (even[i] ?? 1) / baffleStep(f, corner)));
    return even;
  });

  const powers = once(() => cellPowers({ left: sides.left.field.parts, right: sides.right.field.parts }));

  /** Members are worked out when they are first read: a search asks thousands of layouts for one of them. */
  const sideSound = (side: SideName): SideSound => {
    const of = plan.sides[side];
    const { arrivals, field, reference } = sides[side];
    const early = once(() => earlySound(sides[side], surfaces, of.reflections, speed));
    const directivity = once(() => standing.sides[side].drivers.map((driver) => driverSound(driver, speed)));
    const crossovers = once(() =>
      speaker.crossovers.flatMap((crossover, index) => {
        const planned = of.crossovers[index];
        return planned
          ? [
              crossoverSound(
                { speaker, layout, side, plan: of, drivers: standing.sides[side].drivers, head, speed },
                crossover,
                planned,
              ),
            ]
          : [];
      }),
    );
    const reflections = once(() => reflectionSound(arrivals, field.parts, of.reflections));
    const response = once(() => responsePlan([field], powers()[side], reference, evened(), surfaces, known));
    return {
      get drivers() {
        return directivity();
      },
      get crossovers() {
        return crossovers();
      },
      get reflections() {
        return reflections();
      },
      get early() {
        return early();
      },
      get earlyPasses() {
        return early().every(({ passes }) => passes);
      },
      get response() {
        return response();
      },
    };
  };
  const { left, right } = sides;
  const both = once(() =>
    responsePlan([left.field, right.field], powers().both, left.reference + right.reference, evened(), surfaces, known),
  );
  const bands = once((): Bands => {
    const bare = { ...options, bands: false };
    const steps = bandSteps(project, { layout, plan }, sound, (of) => soundOf(project, of.layout, of.plan, bare));
    let step = steps.next();
    while (!step.done) step = steps.next();
    return step.value;
  });
  const sound: SoundPlan = {
    layout: layout.name,
    frequencies,
    sides: { left: sideSound('left'), right: sideSound('right') },
    get both() {
      return both();
    },
    designPoint: point && { ...point, assumed: speaker.designPoint.rule === 'maker' },
    baffleStep: { corner, counted: options.baffleStep ?? false, source: 'rule of thumb' },
    early: { level: EARLY.level, window: EARLY.window, source: EARLY.source, plainly: EARLY.plainly },
    get bands() {
      return options.bands === false ? null : bands();
    },
    deskKnownFrom: DESK_KNOWN_FROM,
    leftOut,
  };
  return sound;
}

function responsePlan(
  fields: readonly Field[],
  cells: Float64Array,
  reference: number,
  evened: Float64Array,
  surfaces: readonly RoomSurface[],
  known: boolean,
): ResponsePlan {
  const sum = together(fields.map(({ total }) => ({ sum: total })));
  const response = responseOf(sum, cells, reference, evened);
  const remedies = remediesFor(fields, known);
  const notches = notchesOf(response.fine, sum, remedies).map(({ index, frequency, level, depth, cause, fill }) => {
    const culprit = cause === null ? null : (remedies[cause]?.culprit ?? null);
    const surface = culprit?.kind === 'surface' ? surfaces[culprit.surface] : undefined;
    return {
      index,
      frequency,
      level,
      depth,
      cause: surface?.name ?? (culprit && culprit.kind !== 'surface' ? culprit.kind : null),
      monitor: surface?.monitor ?? null,
      fill,
    };
  });
  return { ...response, notches };
}
