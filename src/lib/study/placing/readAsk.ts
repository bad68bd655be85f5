import { failure, pointerTo, success, type Fault, type Result } from '$lib/project/fault.ts';
import { placement, tilt } from '$lib/project/fields/aim.ts';
import { listener } from '$lib/project/fields/listener.ts';
import { stand as standFields } from '$lib/project/fields/stand.ts';
import { got } from '$lib/project/got.ts';
import { expectation, type Range } from '$lib/project/range.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { says } from '$lib/project/sentence.ts';
import type { ExistingStand, PlaceAsk } from './ask.ts';
import type { Allowed } from './hit.ts';
import type { Box } from './leastMove.ts';
import type { Span } from './span.ts';
import { layoutNamed, standsOfLayout, typedStand } from './stands.ts';

/** What an axis may be let miss by: under it nobody can set a loudspeaker, over it nobody would call it a hit. */
export const missRange: Range = { what: 'a miss', min: 0.1, max: 500, unit: 'mm' };
/** How far to keep clear of things. */
export const clearRange: Range = { what: 'a gap', min: 0, max: 1000, unit: 'mm' };
/** Height of the slope under the cabinet's front. */
export const frontRange: Range = { ...standFields.lift, what: 'a height' };

type Document = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const KEYS = ['stands', 'miss', 'clear', 'marks', 'setback', 'earHeight'];

/**
 * An ask from its document; or its faults, with pointers from the document. Left out: `miss`, the safe zone; `clear`, 0;
 * `marks`, anywhere on the desk (false: they stay); `setback` and `earHeight`, they stay.
 */
export function readPlaceAsk(document: unknown, project: Project, layout: Layout): Result<PlaceAsk> {
  if (!isObject(document)) {
    return failure({ pointer: '', message: `expected an object with stands, got ${got(document)}` });
  }
  const faults: Fault[] = [...unknownKeys(document, KEYS, '')];
  const take = <Value>(result: Result<Value>): Value | null => {
    if (result.ok) return result.value;
    faults.push(...result.faults);
    return null;
  };
  const stands = take(readStands(document.stands, project));
  const allowed = take(readAllowed(document.miss));
  const clear = take(readClear(document.clear));
  const marks = take(readMarks(document.marks, layout));
  const setback = take(readSpan(document.setback, listener.setback, '/setback'));
  const earHeight = take(readSpan(document.earHeight, listener.earHeight, '/earHeight'));
  if (!stands || !allowed || !clear || faults.length > 0) return { ok: false, faults };
  return success({ stands, allowed, clear, marks, setback, earHeight });
}

function readStands(document: unknown, project: Project): Result<PlaceAsk['stands']> {
  const at = '/stands';
  if (!isObject(document)) {
    const message = `expected an object with tilt and lift, or tilt and front, or layout, or left and right, got ${got(document)}`;
    return failure({ pointer: at, message });
  }
  if (document.layout !== undefined) {
    const unknown = unknownKeys(document, ['layout'], at);
    if (unknown.length > 0) return { ok: false, faults: unknown };
    if (typeof document.layout !== 'string') {
      return failure({
        pointer: `${at}/layout`,
        message: `expected the name of a layout, got ${got(document.layout)}`,
      });
    }
    const named = layoutNamed(project, document.layout, `${at}/layout`);
    if (!named.ok) return named;
    const stands = standsOfLayout(project, named.value);
    if (stands.ok) return stands;
    const [why] = stands.faults;
    const message = says`expected a layout that has stands, got one without: ${why?.message ?? ''}`;
    return failure({ pointer: `${at}/layout`, message });
  }
  if (document.left !== undefined || document.right !== undefined) {
    const unknown = unknownKeys(document, ['left', 'right'], at);
    if (unknown.length > 0) return { ok: false, faults: unknown };
    const left = readStand(document.left, project, `${at}/left`);
    const right = readStand(document.right, project, `${at}/right`);
    if (!left.ok) return left;
    return right.ok ? success({ left: left.value, right: right.value }) : right;
  }
  const both = readStand(document, project, at);
  return both.ok ? success({ left: both.value, right: both.value }) : both;
}

function readStand(document: unknown, { speaker }: Project, at: string): Result<ExistingStand> {
  if (!isObject(document)) {
    return failure({ pointer: at, message: `expected an object with tilt and lift or front, got ${got(document)}` });
  }
  const unknown = unknownKeys(document, ['tilt', 'lift', 'front'], at);
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const heights = (['lift', 'front'] as const).filter((key) => document[key] !== undefined);
  const [height] = heights;
  if (height === undefined || heights.length > 1) {
    return failure({ pointer: at, message: `expected one of lift and front, got ${height === undefined ? 'none' : 'both'}` }); // prettier-ignore
  }
  const slope = readNumber(document.tilt, tilt.degrees, `${at}/tilt`);
  const value = readNumber(document[height], height === 'lift' ? standFields.lift : frontRange, `${at}/${height}`);
  if (!slope.ok) return slope;
  return value.ok
    ? typedStand(speaker, { tilt: slope.value, height: { at: height, value: value.value } }, `${at}/${height}`)
    : value;
}

function readAllowed(document: unknown): Result<Allowed> {
  if (document === undefined) return success('safe-zone');
  const miss = readNumber(document, missRange, '/miss');
  return miss.ok ? success({ miss: miss.value }) : miss;
}

function readClear(document: unknown): Result<PlaceAsk['clear']> {
  if (document === undefined) return success({ screen: 0, wall: 0 });
  if (!isObject(document)) {
    return failure({ pointer: '/clear', message: `expected an object with screen and wall, got ${got(document)}` });
  }
  const unknown = unknownKeys(document, ['screen', 'wall'], '/clear');
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const screen = readNumber(document.screen ?? 0, clearRange, '/clear/screen');
  const wall = readNumber(document.wall ?? 0, clearRange, '/clear/wall');
  if (!screen.ok) return screen;
  return wall.ok ? success({ screen: screen.value, wall: wall.value }) : wall;
}

/** Anywhere on the desk. */
export function wholeDesk({ desk }: Layout): Box {
  const { left, right, bottom, top } = deskShape(desk).extent;
  return { left, right, front: bottom, back: top };
}

function readMarks(document: unknown, layout: Layout): Result<Box | null> {
  if (document === undefined || document === true) return success(wholeDesk(layout));
  if (document === false) return success(null);
  if (!isObject(document)) {
    const message = `expected true, false, or an object with x and y, each from … to, got ${got(document)}`;
    return failure({ pointer: '/marks', message });
  }
  const unknown = unknownKeys(document, ['x', 'y'], '/marks');
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const whole = wholeDesk(layout);
  const x = readSpan(document.x, placement.right.x, '/marks/x');
  const y = readSpan(document.y, placement.right.y, '/marks/y');
  if (!x.ok) return x;
  if (!y.ok) return y;
  return success({
    left: x.value?.from ?? whole.left,
    right: x.value?.to ?? whole.right,
    front: y.value?.from ?? whole.front,
    back: y.value?.to ?? whole.back,
  });
}

function readSpan(document: unknown, range: Range, at: string): Result<Span | null> {
  if (document === undefined) return success(null);
  if (!isObject(document)) {
    return failure({ pointer: at, message: `expected an object with from and to, got ${got(document)}` });
  }
  const unknown = unknownKeys(document, ['from', 'to'], at);
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const from = readNumber(document.from, range, `${at}/from`);
  const to = readNumber(document.to, range, `${at}/to`);
  if (!from.ok) return from;
  if (!to.ok) return to;
  return from.value <= to.value
    ? success({ from: from.value, to: to.value })
    : failure({ pointer: `${at}/to`, message: `expected ${from.value} or more, where the range begins, got ${to.value}` }); // prettier-ignore
}

const readNumber = (value: unknown, range: Range, at: string): Result<number> =>
  typeof value === 'number' && value >= range.min && value <= range.max
    ? success(value)
    : failure({ pointer: at, message: `expected ${expectation(range, value)}, got ${got(value)}` });

const unknownKeys = (one: Document, known: readonly string[], at: string): Fault[] =>
  Object.keys(one)
    .filter((key) => !known.includes(key))
    .map((key) => ({ pointer: `${at}${pointerTo(key)}`, message: `unknown key, expected one of ${known.join(', ')}` }));
