import { radians } from '$lib/geometry/angle.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import type { ToeRule } from '$lib/project/project.ts';
import { asMm, needs, says } from '$lib/project/sentence.ts';

/** What the toe is solved from, seen as a right loudspeaker: x to the right, y away from the listener, mm. */
export interface ToeTask {
  readonly rule: ToeRule;
  /** From the mark to the head, in plan. */
  readonly head: { readonly x: number; readonly y: number };
  /** Half the head width: the ear on the loudspeaker's own side lies that far to the right of the head. */
  readonly earOffset: number;
  /** How far inboard of the baffle's middle the aimed point lies. */
  readonly inboard: number;
}

/**
 * The toe, radians in (−π, π], positive towards the middle.
 *
 * In plan the axis is the line through mark + offset · i along −(sin φ, cos φ), with i = (−cos φ, sin φ). It passes a
 * target at distance R and bearing β (the toe that would point the middle of the baffle at it) when
 * R · sin(β − φ) = offset, so φ = β − asin(offset / R), which also keeps the target in front.
 *
 * No answer when the target is no further from the mark than the aimed point is from the baffle's middle.
 */
export function solveToe({ rule, head, earOffset, inboard }: ToeTask): Result<number> {
  switch (rule.rule) {
    case 'straight':
      return success(0);
    case 'as-set':
      return success(radians(rule.degrees));
    case 'to-head':
      return through(head.x, head.y, inboard, 'head');
    case 'to-ear':
      return through(head.x + earOffset, head.y, inboard, 'ear');
    case 'behind-head':
      return through(head.x, head.y - rule.distance, inboard, 'point behind the head');
  }
}

function through(x: number, y: number, inboard: number, target: string): Result<number> {
  const away = Math.hypot(x, y);
  if (away <= Math.abs(inboard)) {
    return failure({
      pointer: '/aim/toe',
      message: needs(
        says`the ${target} further from the mark in plan than the aimed point's offset of ${asMm(Math.abs(inboard))}`,
        asMm(away),
        "move the mark or the seat, or aim through a driver nearer the baffle's middle",
      ),
    });
  }
  const bearing = Math.atan2(-x, -y);
  const turned = bearing - Math.atan2(inboard, Math.sqrt((away - inboard) * (away + inboard)));
  return success(turned <= -Math.PI ? turned + 2 * Math.PI : turned > Math.PI ? turned - 2 * Math.PI : turned);
}
