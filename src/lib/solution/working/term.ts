import { degrees, radians } from '$lib/geometry/angle.ts';
import { jinc } from '$lib/acoustics/bessel.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';

/** Whose numbers a formula is read from: one side of a plan and, where there are several, which entry of a list. */
export interface Subject {
  readonly project: Project;
  readonly layout: Layout;
  readonly plan: Plan;
  readonly side: SideName;
  /** Place among the drivers, crossovers or reflections; 0 elsewhere. */
  readonly index: number;
}

/** A number with a name. Angles are degrees. */
export interface Quantity {
  /** One letter, with what stands below it. */
  readonly letter: string;
  readonly below?: string;
  readonly says: string;
  readonly unit: Unit;
  readonly of: (subject: Subject) => number;
}

export type Unit =
  | 'mm'
  | 'mm³'
  | 'mm/ms'
  | 'in'
  | 'in³'
  | 'in/ms'
  | '°'
  | 'm/s'
  | 'µs'
  | 'ms'
  | 'dB'
  | 'Hz'
  | 'kg'
  | 'kg/m³'
  | 'N'
  | 'm/s²'
  | '°C'
  | '';

interface NumberTerm {
  readonly kind: 'number';
  readonly value: number;
  /** The power of a millimetre that it is counted in: 3 for the cubic millimetres in a cubic metre; 0 unless said. */
  readonly lengths?: number;
}

/** What a formula is made of: data, so that it can be shown with letters, shown with numbers, and worked out. */
export type Term =
  | { readonly kind: 'quantity'; readonly quantity: Quantity }
  | NumberTerm
  | { readonly kind: 'plus' | 'minus' | 'times' | 'over'; readonly a: Term; readonly b: Term }
  | { readonly kind: 'square' | 'root' | 'size'; readonly a: Term }
  | { readonly kind: 'call'; readonly name: CallName; readonly args: readonly Term[] };

export type CallName = keyof typeof calls;

/** Functions that a formula may call; angles in degrees. */
const calls = {
  sin: (a: number) => Math.sin(radians(a)),
  cos: (a: number) => Math.cos(radians(a)),
  tan: (a: number) => Math.tan(radians(a)),
  arcsin: (a: number) => degrees(Math.asin(a)),
  arctan: (a: number) => degrees(Math.atan(a)),
  /** The direction of (second, first): arctan of their ratio, in the right quadrant. */
  atan2: (a: number, b = 0) => degrees(Math.atan2(a, b)),
  lg: (a: number) => Math.log10(a),
  max: (a: number, b = 0) => Math.max(a, b),
  round: (a: number) => Math.round(a),
  /** 2·J₁(x)/x. */
  D: (a: number) => jinc(a),
} as const satisfies Record<string, (a: number, b?: number) => number>;

type Part = Term | Quantity | number;

const term = (part: Part): Term =>
  typeof part === 'number'
    ? { kind: 'number', value: part }
    : 'kind' in part
      ? part
      : { kind: 'quantity', quantity: part };

const joined =
  (kind: 'plus' | 'minus' | 'times' | 'over') =>
  (first: Part, ...rest: readonly Part[]): Term =>
    rest.reduce<Term>((a, b) => ({ kind, a, b: term(b) }), term(first));

export const plus = joined('plus');
export const minus = joined('minus');
export const times = joined('times');
export const over = joined('over');
/** A number that hangs on what lengths are counted in, in millimetres to a power. */
export const inMillimetres = (value: number, lengths: number): Term => ({ kind: 'number', value, lengths });
export const square = (a: Part): Term => ({ kind: 'square', a: term(a) });
export const root = (a: Part): Term => ({ kind: 'root', a: term(a) });
export const size = (a: Part): Term => ({ kind: 'size', a: term(a) });
export const call = (name: CallName, ...args: readonly Part[]): Term => ({ kind: 'call', name, args: args.map(term) });

/** The number that a term comes to. */
export function worth(of: Term, subject: Subject): number {
  switch (of.kind) {
    case 'quantity':
      return of.quantity.of(subject);
    case 'number':
      return of.value;
    case 'plus':
      return worth(of.a, subject) + worth(of.b, subject);
    case 'minus':
      return worth(of.a, subject) - worth(of.b, subject);
    case 'times':
      return worth(of.a, subject) * worth(of.b, subject);
    case 'over':
      return worth(of.a, subject) / worth(of.b, subject);
    case 'square':
      return worth(of.a, subject) ** 2;
    case 'root':
      return Math.sqrt(worth(of.a, subject));
    case 'size':
      return Math.abs(worth(of.a, subject));
    case 'call': {
      const [a = NaN, b] = of.args.map((arg) => worth(arg, subject));
      return calls[of.name](a, b);
    }
  }
}

/** Every named number in a term, each once, in the order in which they are read. */
export function quantitiesIn(of: Term): readonly Quantity[] {
  const all =
    of.kind === 'quantity'
      ? [of.quantity]
      : of.kind === 'number'
        ? []
        : of.kind === 'call'
          ? of.args.flatMap(quantitiesIn)
          : 'b' in of
            ? [...quantitiesIn(of.a), ...quantitiesIn(of.b)]
            : quantitiesIn(of.a);
  return [...new Set(all)];
}
