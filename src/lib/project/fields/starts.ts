import { isField, type ChoiceField, type ColourField, type Field, type Fields, type NumberField, type SwitchField } from './field.ts'; // prettier-ignore

type Start<One> =
  One extends NumberField<infer Default, infer Begin>
    ? [Begin] extends [undefined]
      ? Default
      : Begin
    : One extends ColourField
      ? string
      : One extends ChoiceField<string, infer Default> | SwitchField<infer Default>
        ? Default
        : Starts<One>;

/** What the values of a thing start as. */
export type Starts<Of> = { readonly [Key in keyof Of]: Start<Of[Key]> };

/**
 * A thing with every value as it starts: its default, or what a new one begins with where it has none or a better one. A
 * value with neither is left out.
 */
export function startOf<const Of extends Fields>(fields: Of): Starts<Of>;
export function startOf(fields: Fields): unknown {
  const entries = Object.entries(fields).map(([key, one]) => [key, isField(one) ? valueOf(one) : startOf(one)]);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

function valueOf(field: Field): unknown {
  if (field.kind === 'text') return undefined;
  if (field.kind === 'colour') return field.start;
  return field.kind === 'number' ? (field.start ?? field.default) : field.default;
}
