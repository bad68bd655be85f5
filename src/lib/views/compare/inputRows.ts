import { fieldAt, placeOf } from '$lib/document/fields.ts';
import { parentOf } from '$lib/document/pointer.ts';
import { angleText, lengthWithUnit, trimmed } from '$lib/project/lengthText.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Difference } from '$lib/study/differences.ts';

type Value = Difference['values'][number];

/** One input that is not the same in all layouts, as it is read. */
export interface InputRow {
  readonly label: string;
  readonly cells: readonly { readonly text: string; readonly changed: boolean }[];
}

/** Decimals of a number that is neither a length nor an angle. */
const DECIMALS = 3;

/**
 * What differs in the input, a row each. What the two loudspeakers have as mirror images is told once; how parts lie on
 * their sheets, of which nobody reads the numbers, only that it differs. Changed is what is not as in the first layout.
 */
export function inputRows(differs: readonly Difference[], display: LengthDisplay): InputRow[] {
  const told = differs.filter((one) => !isTold(one, differs) && !isArrangement(one) && !goesWithWall(one));
  const rows = told.map((one): InputRow => {
    const pair = twinOf(one, differs) !== undefined;
    const texts = one.values.map((value) => valueText(one.pointer, value, display));
    return { label: labelOf(one.pointer, pair), cells: cellsOf(texts) };
  });
  const arranged = differs.filter(isArrangement);
  if (arranged.length === 0) return rows;
  const count = arranged[0]?.values.length ?? 0;
  const of = (place: number): string => JSON.stringify(arranged.map(({ values }) => values[place]));
  const texts = Array.from({ length: count }, (_, place) => (of(place) === of(0) ? 'as in the first' : 'otherwise'));
  return [...rows, { label: 'Sheets, arrangement', cells: cellsOf(texts) }];
}

const cellsOf = (texts: readonly string[]): InputRow['cells'] =>
  texts.map((text) => ({ text, changed: text !== texts[0] }));

const isArrangement = ({ pointer }: Difference): boolean => pointer.startsWith('/arrangement');

const WALL = /^\/room\/walls\/\d+\//;

/** Of a wall that is not in every layout its distance says enough. */
const goesWithWall = ({ pointer, values }: Difference): boolean =>
  WALL.test(pointer) && !pointer.endsWith('/distance') && values.includes(null);

const SIDE = /^\/placement\/(left|right)\/([xy])$/;

/** The same of the other loudspeaker, where it is its mirror image in every layout. */
function twinOf({ pointer, values }: Difference, differs: readonly Difference[]): Difference | undefined {
  const [, side, axis] = SIDE.exec(pointer) ?? [];
  if (side === undefined) return undefined;
  const twin = differs.find((one) => one.pointer === `/placement/${side === 'left' ? 'right' : 'left'}/${axis}`);
  const sign = axis === 'x' ? -1 : 1;
  const isMirror = twin?.values.every((value, index) => value === sign * Number(values[index]));
  return isMirror ? twin : undefined;
}

/** Whether it goes with the right loudspeaker’s. */
const isTold = (one: Difference, differs: readonly Difference[]): boolean =>
  one.pointer.startsWith('/placement/left') && twinOf(one, differs) !== undefined;

function labelOf(pointer: string, pair: boolean): string {
  const place = placeOf(`/layouts/0${pointer}`);
  return pair ? place.replace(/^Placement, right, /, 'Each mark, ') : place;
}

function valueText(pointer: string, value: Value, display: LengthDisplay): string {
  const at = `/layouts/0${pointer}`;
  const field = fieldAt(at) ?? fieldAt(parentOf(at) ?? '');
  if (value === null && WALL.test(pointer)) return 'no wall';
  if (value === null) return field?.kind === 'number' ? (field.empty ?? 'none') : 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') {
    const option = field?.kind === 'choice' ? field.options.find(([choice]) => choice === value) : undefined;
    return option?.[1] ?? value;
  }
  const unit = field?.kind === 'number' ? field.unit : '';
  if (unit === 'mm') return lengthWithUnit(value, display);
  if (unit === '°') return angleText(value);
  return `${trimmed(value, DECIMALS)}${unit === '' ? '' : `\u202f${unit}`}`;
}
