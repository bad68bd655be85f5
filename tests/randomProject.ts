import { demoProject } from '$lib/project/demo.ts';

/** Numbers in 0…1, one after the other. */
export type Source = () => number;

/**
 * The document of a project as somebody might enter it, drawn from a source: any build, base and detail, stock from veneer
 * to beams, a printer of any size, any seat, marks and aim. Most are sound and nearly half of those have a plan.
 */
export const randomProject = (next: Source): unknown => drawn(next);

/**
 * The same without what every reader of the first refusal would put right at once: details that a base, a build or a skin
 * rules out, a recess without a lip, an axis far over the ear, a bed that takes no core. Most have a plan.
 */
export function likelyProject(next: Source): unknown {
  const { layouts, printer, ...rest } = drawn(next);
  const { aim, stand, ...layout } = layouts[0];
  const square = stand.base === 'square-to-desk';
  const ribs = square && stand.ribs ? { ...stand.ribs, skin: null } : stand.ribs;
  const skinned = stand.build === 'ribbed' && ribs !== null && ribs.skin !== null;
  const { recess, cable } = stand;
  // A ribbed stand holds no mat.
  const mat = stand.build === 'ribbed' || recess === null ? null : { ...recess, border: Math.max(recess.border, 8) };
  const tilt = aim.tilt.rule === 'lift-to-ear' ? { ...aim.tilt, degrees: aim.tilt.degrees / 2 - 8 } : aim.tilt;
  const bed = printer
    ? { x: printer.bed.x + 150, y: printer.bed.y + 150, z: printer.bed.z + 100 }
    : { x: 400, y: 400, z: 300 };
  return {
    ...rest,
    printer: stand.build === 'skinned' ? { bed } : printer,
    layouts: [
      {
        ...layout,
        aim: { ...aim, tilt },
        stand: {
          ...stand,
          ribs,
          recess: mat,
          stop: square || skinned ? null : stand.stop,
          ends: square ? 'plumb' : stand.ends,
          cable: cable && { ...cable, fromRear: Math.max(cable.fromRear, 30) },
        },
      },
    ],
  };
}

function drawn(next: Source) {
  const within = (min: number, max: number): number => min + (max - min) * next();
  const one = <const Value>(...values: readonly Value[]): Value => values[Math.floor(next() * values.length)] as Value;
  const whole = (min: number, max: number): number => Math.floor(within(min, max + 1));
  /** As often none as the share says. */
  const or = <Value>(share: number, some: () => Value): Value | null => (next() < share ? null : some());
  /** Entered by rule, so that coincidences come up, or any length. */
  const length = (min: number, max: number): number => (next() < 0.5 ? Math.round(within(min, max)) : within(min, max));

  const speaker = {
    ...demoProject.speaker,
    width: length(100, 300),
    height: 270 + whole(0, 200),
    depth: length(110, 380),
    baffleRake: one(0, 0, within(-6, 12)),
    mass: or(0.3, () => within(1, 15)),
  };
  const taper = one(0, 0, within(0, 2));
  const sheet = { width: whole(400, 2440), height: whole(300, 1220) };
  const stock = ['first', 'second', 'third'].map((name) => ({
    name,
    thickness: one(3.05, 6, 9, 12, 18, within(0.6, 40), within(2, 12)),
    sheet,
    density: within(300, 900),
  }));
  const name = (): string => one('first', 'second', 'third');
  const mark = (side: -1 | 1) => ({ x: side * within(250, 800), y: within(120, 500) });
  const stand = {
    lift: one(within(4, 120), within(10, 40), within(20, 300)),
    build: one('stacked', 'skinned', 'ribbed', 'solid'),
    base: one('turned', 'turned', 'square-to-desk'),
    stock: or(0.4, name),
    width: or(0.6, () => length(30, 400)),
    frontMargin: one(0, 0, 5, length(0, 80)),
    rearMargin: one(0, 0, 5, length(0, 80)),
    ends: one('plumb', 'plumb', 'square'),
    stop: or(0.7, () => ({ height: length(2, 40), thickness: length(2, 25) })),
    minimumEdge: one(3, 3, 0.5, within(0.5, 12)),
    rods: or(0.3, () => ({
      diameter: one(3, 6, 8, within(2, 16)),
      count: whole(2, 4),
      clearance: one(0, 0.1, 0.4),
      edge: one(2, 2, 0.5, within(0.5, 8)),
    })),
    feet: one(0, 0, length(1, 15)),
    pad: one(0, 0, length(1, 6)),
    veneer: one(0, 0, 0.6, within(0.3, 5)),
    veneerFaces: one(
      { top: true, front: true, rear: true, sides: true, base: false },
      { top: next() < 0.5, front: next() < 0.5, rear: next() < 0.5, sides: next() < 0.5, base: next() < 0.5 },
    ),
    glue: one(0, 0, 0.1, within(0, 1)),
    corner: or(0.6, () => one(3, 40, length(0, 60))),
    relief: or(0.6, () => ({ web: one(8, 3, within(1, 20)), corner: one(3, 0, within(0, 40)) })),
    cheeks: or(0.6, () => ({ stock: or(0.3, name), count: whole(1, 3) })),
    ribs: or(0.4, () => ({
      count: whole(2, 3),
      cross: whole(2, 6),
      fit: one(0.1, 0, within(0, 0.5)),
      inset: length(2, 30),
      skin: or(0.4, name),
    })),
    pockets: or(0.7, () => ({ count: whole(1, 4), diameter: within(4, 30), depth: within(1, 40) })),
    cable: or(0.7, () => ({ width: length(2, 30), depth: length(1, 20), fromRear: length(0, 250) })),
    recess: or(0.7, () => ({ face: one('top', 'base'), depth: within(0.3, 6), border: one(0, 0.5, 5, length(0, 40)) })),
    friction: one(0.3, within(0.05, 1)),
  };
  const aim = {
    through: one<unknown>('tweeter', 'woofer', { between: ['tweeter', 'woofer'], fraction: 0.4 }),
    toe: one(
      { rule: 'to-head' },
      { rule: 'to-ear' },
      { rule: 'straight' },
      { rule: 'behind-head', distance: within(0, 800) },
      { rule: 'as-set', degrees: within(-20, 50) },
    ),
    tilt: one(
      { rule: 'tilt-to-ear' },
      { rule: 'tilt-to-ear' },
      { rule: 'tilt-to-ear' },
      { rule: 'lift-to-ear', degrees: within(-10, 25) },
      { rule: 'as-set', degrees: within(-30, 40) },
    ),
  };
  const { lift, ...rest } = stand;
  const {
    layouts: [layout],
    ...demo
  } = demoProject;
  return {
    ...demo,
    speaker,
    stock,
    cutter: { kerf: one(0, 0.2, 3), taper, spacing: 2, margin: 5 },
    printer: or(0.4, () => ({ bed: { x: whole(120, 400), y: whole(120, 400), z: whole(80, 400) } })),
    layouts: [
      {
        ...layout,
        listener: {
          ...layout.listener,
          offset: one(0, within(-200, 200)),
          setback: within(0, 700),
          earHeight: within(950, 1400),
        },
        placement: { left: mark(-1), right: mark(1) },
        aim,
        stand: aim.tilt.rule === 'lift-to-ear' ? rest : { lift, ...rest },
      },
    ] as const,
  };
}
