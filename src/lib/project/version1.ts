/**
 * A document of version 1 as one of version 2: the desk's width and depth become a rectangle, the gap behind it and the two
 * side walls become walls by bearing and distance, and what a surface absorbs stands with the surface. Neither is checked
 * yet: what is no number stays, where its reader looks for one. Where nobody said how the drivers are lined up, that is not
 * known: version 1 assumed nothing of it.
 */
export const fromVersion1 = (older: Document): Document => ({
  ...older,
  version: 2,
  ...(isDocument(older['speaker']) ? { speaker: { designPoint: null, ...older['speaker'] } } : {}),
  ...(Array.isArray(older['layouts']) ? { layouts: older['layouts'].map(layoutFrom) } : {}),
});

type Document = Readonly<Record<string, unknown>>;

const isDocument = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const documentIn = (value: unknown): Document => (isDocument(value) ? value : {});

const numberIn = (value: unknown, otherwise: number): number => (typeof value === 'number' ? value : otherwise);

/** The keys that are there: a missing one is told as missing where it now belongs. */
const given = (of: Document): Document =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined));

function layoutFrom(layout: unknown): unknown {
  if (!isDocument(layout)) return layout;
  const entered = layout['entered'];
  return {
    ...layout,
    ...(isDocument(layout['desk']) ? deskAndRoom(layout, layout['desk']) : {}),
    ...(Array.isArray(entered) ? { entered: entered.map(renamed) } : {}),
  };
}

function deskAndRoom(layout: Document, older: Document): Document {
  const { width, depth, wallGap, ...desk } = older;
  const room = layout['room'];
  const { leftWall, rightWall, ceiling, absorption: absorbed, ...more } = documentIn(room);
  const { desk: top, wall, sides, ceiling: over, ...others } = documentIn(absorbed);
  const half = numberIn(width, 0) / 2;
  const { least, most } = earsOf(documentIn(layout['listener']));
  const screens = screensOf(layout['monitors']);
  const walls = [
    wallFrom('behind', 0, wallGap, {
      from: numberIn(depth, 0),
      least: Math.max(most.y, screens.back),
      absorption: wall,
    }),
    wallFrom('left', -90, leftWall, { from: 0, least: Math.max(half, -least.x, screens.left), absorption: sides }),
    wallFrom('right', 90, rightWall, { from: 0, least: Math.max(half, most.x, screens.right), absorption: sides }),
  ].flatMap((one) => one ?? []);
  return {
    desk: {
      ...desk,
      outline: given({ rule: 'rectangle', width, depth }),
      ...given({ absorption: top }),
    },
    // What is no object there stays for its reader to refuse.
    ...(room !== undefined && !isDocument(room)
      ? {}
      : {
          room: {
            ...more,
            ...(absorbed !== undefined && !isDocument(absorbed) ? { absorption: absorbed } : others),
            walls,
            ...(ceiling === undefined || ceiling === null
              ? {}
              : { ceiling: given({ height: ceiling, absorption: over }) }),
          },
        }),
  };
}

/** The least distance that version 1 took for a side wall, mm. */
const LEAST_ASIDE = 100;

interface Stood {
  /** What its number was counted from, mm from the origin. */
  readonly from: number;
  /** mm from the origin: nearer there is the desk or the head. */
  readonly least: number;
  readonly absorption: unknown;
}

/**
 * A wall of version 2; null where there was none. Version 1 let one run through the desk, the head or a screen’s face: it is
 * put where it touches them, for no plan but that of the sound asked where it was.
 */
function wallFrom(name: string, bearing: number, stood: unknown, { from, least, absorption }: Stood): Document | null {
  if (stood === undefined || stood === null) return null;
  const sound = typeof stood === 'number' && stood >= (bearing === 0 ? 0 : LEAST_ASIDE);
  const distance = sound ? Math.max(stood + from, least) : typeof stood === 'number' ? stood + from : stood;
  return given({ name, bearing, distance, absorption });
}

/** How far the ears reach in plan, mm. */
function earsOf(listener: Document) {
  const offset = numberIn(listener['offset'], 0);
  const half = numberIn(listener['headWidth'], USUAL_HEAD) / 2;
  return { least: { x: offset - half }, most: { x: offset + half, y: -numberIn(listener['setback'], 0) } };
}

/** How far the faces of screens reach back and to both sides, mm; −Infinity of none. */
function screensOf(monitors: unknown) {
  const all = (Array.isArray(monitors) ? monitors : []).map(documentIn);
  const most = (reach: (monitor: Document) => number): number => Math.max(...all.map(reach));
  const x = (monitor: Document): number => numberIn(monitor['x'], 0);
  const half = (monitor: Document): number => numberIn(monitor['width'], 0) / 2;
  return {
    back: most((one) => numberIn(one['y'], -Infinity)),
    left: most((one) => half(one) - x(one)),
    right: most((one) => half(one) + x(one)),
  };
}

/** What version 1 took for the width of a head where a file did not say, mm. */
const USUAL_HEAD = 152;

const names: Readonly<Record<string, string>> = {
  'desk/width': 'desk/outline/width',
  'desk/depth': 'desk/outline/depth',
  'desk/wallGap': 'room/walls',
};

const renamed = (key: unknown): unknown => (typeof key === 'string' ? (names[key] ?? key) : key);
