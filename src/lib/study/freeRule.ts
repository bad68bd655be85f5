import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import { checkAimRule } from '$lib/project/parse.ts';
import type { Layout } from '$lib/project/project.ts';
import type { AimRule } from './input.ts';
import { unknownKeys, type Document } from './unknownKeys.ts';

/** A rule of toe or tilt that may be any of several. */
export interface FreeRule {
  readonly pointer: RulePointer;
  readonly rules: readonly AimRule[];
  /** How many rules. */
  readonly count: number;
  readonly mirror: false;
}

const keys = { '/aim/toe': 'toe', '/aim/tilt': 'tilt' } as const;
export type RulePointer = keyof typeof keys;

export const isRulePointer = (pointer: unknown): pointer is RulePointer =>
  typeof pointer === 'string' && Object.hasOwn(keys, pointer);

/** A free rule from its document, `{ pointer, values: [rule, …] }`; or its faults. @param at Its pointer in the ask. */
export function readFreeRule(one: Document, pointer: RulePointer, layout: Layout, at: string): Result<FreeRule> {
  const unknown = unknownKeys(one, ['pointer', 'values'], at);
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const { values } = one;
  if (!Array.isArray(values) || values.length === 0) {
    return failure({ pointer: `${at}/values`, message: `expected a list of at least one rule, got ${got(values)}` });
  }
  const rules: AimRule[] = [];
  const faults: Fault[] = [];
  values.forEach((value: unknown, index) => {
    const place = `${at}/values/${index}`;
    const rule = checkAimRule(keys[pointer], value);
    if (!rule.ok) {
      faults.push(...rule.faults.map((fault) => ({ ...fault, pointer: `${place}${fault.pointer}` })));
    } else if (pointer === '/aim/tilt' && layout.stand.lift === undefined && rule.value.rule !== 'lift-to-ear') {
      const message = `expected lift-to-ear, as the layout has no lift of its own, got ${got(rule.value.rule)}`;
      faults.push({ pointer: `${place}/rule`, message });
    } else rules.push(rule.value);
  });
  return faults.length > 0 ? { ok: false, faults } : success({ pointer, rules, count: rules.length, mirror: false });
}
