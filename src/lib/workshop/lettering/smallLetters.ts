/** Letters set small: their text, their share of the full height, and how high over the baseline they stand, in tenths of it. */
export interface SmallText {
  readonly text: string;
  readonly scale: number;
  readonly raise: number;
}

/** Half the height and a little more, so that a fraction reads where 2.5 mm lettering is the smallest. */
const SMALL = 0.55;
const RAISED = 10 * (1 - SMALL);

const raised = (text: string): SmallText => ({ text, scale: SMALL, raise: RAISED });
const lowered = (text: string): SmallText => ({ text, scale: SMALL, raise: 0 });

/** A fraction as its figures with the slash between them. */
function fraction(character: string): readonly SmallText[] {
  const [over = '', under = ''] = character.normalize('NFKD').split('\u2044');
  return [raised(over), { text: '/', scale: 1, raise: 0 }, lowered(under)].filter(({ text }) => text !== '');
}

const entries = (characters: string, set: (plain: string) => SmallText): [string, readonly SmallText[]][] =>
  [...characters].map((character) => [character, [set(character.normalize('NFKD'))]]);

/** Signs that are letters of another size: vulgar fractions, exponents, indices, the trade mark. */
export const smallLetters: ReadonlyMap<string, readonly SmallText[]> = new Map([
  ...[...'½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒'].map((one): [string, readonly SmallText[]] => [one, fraction(one)]),
  ...entries('⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻⁼⁽⁾ⁿ™℠', raised),
  ...entries('₀₁₂₃₄₅₆₇₈₉₊₋₌₍₎', lowered),
]);
