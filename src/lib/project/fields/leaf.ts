import * as v from 'valibot';
import { colour, flag, name, orNull, quantity, word } from '$lib/project/rules.ts';
import type { ChoiceField, ColourField, NumberField, SwitchField, TextField } from './field.ts';

/** A field that is one value of the file: all but a thing that is there or not. */
type OneValue = NumberField | TextField | ColourField | ChoiceField | SwitchField<boolean>;

type Leaf<One> =
  One extends NumberField<infer Default>
    ? Defaulted<number, Default>
    : One extends ChoiceField<infer Value, infer Default>
      ? Defaulted<Value, Default>
      : One extends SwitchField<boolean>
        ? Defaulted<boolean, boolean>
        : v.GenericSchema<string>;

type Defaulted<Value, Default> = [Default] extends [undefined]
  ? v.GenericSchema<Value>
  : [Default] extends [null]
    ? v.OptionalSchema<v.NullableSchema<v.GenericSchema<Value>, undefined>, null>
    : v.OptionalSchema<v.GenericSchema<Value>, () => Value>;

/** The schema of one value as its field describes it, with its default where it has one. */
export function leaf<One extends OneValue>(field: One): Leaf<One>;
export function leaf(field: OneValue): v.GenericSchema {
  const schema = schemaOf(field);
  const usual = 'default' in field ? field.default : undefined;
  if (usual === undefined) return schema;
  return v.optional(usual === null ? orNull(schema) : schema, usual);
}

function schemaOf(field: OneValue): v.GenericSchema {
  switch (field.kind) {
    case 'number':
      return quantity(field);
    case 'switch':
      return flag();
    case 'colour':
      return colour();
    case 'text':
      return name();
    case 'choice':
      return field.options.length === 0 ? name() : word(field.options.map(([value]) => value));
  }
}

type Leaves<Of> = { readonly [Key in keyof Of]: Leaf<Of[Key]> };

/** The schemas of a thing that is nothing but values. */
export function leaves<Of extends Readonly<Record<string, OneValue>>>(fields: Of): Leaves<Of>;
export function leaves(fields: Readonly<Record<string, OneValue>>): Readonly<Record<string, v.GenericSchema>> {
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, leaf(field)]));
}
