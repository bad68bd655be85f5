import type { StandPlan } from '$lib/solution/document.ts';

/** Joints nearer to each other than this would run into one grey, mm. Then every second, fifth, tenth… is drawn. */
const LEAST_GAP = 8;
const STRIDES = [1, 2, 5];

/** Where layers meet across the width, mm from the middle: cheeks outside, layers or core between them; as many as stay legible. */
export function jointsAcross({ widths, width }: Pick<StandPlan, 'widths' | 'width'>): readonly number[] {
  const each = (what: string) => widths.find((layer) => layer.what === what) ?? { each: 0, count: 0 };
  const [cheek, glue, veneer] = [each('cheek'), each('glue'), each('veneer')];
  const outer = Array.from({ length: cheek.count / 2 }, () => cheek.each);
  const inner = ['layer', 'core'].flatMap((what) => {
    const layer = each(what);
    return Array.from({ length: layer.count }, () => layer.each);
  });
  let x = veneer.each - width / 2;
  const joints: number[] = [];
  for (const thickness of [...outer, ...inner, ...outer].slice(0, -1)) {
    x += thickness + glue.each / 2;
    joints.push(x);
    x += glue.each / 2;
  }
  return thinned(joints);
}

function thinned(joints: readonly number[]): readonly number[] {
  const gap = joints.length < 2 ? LEAST_GAP : ((joints.at(-1) ?? 0) - (joints[0] ?? 0)) / (joints.length - 1);
  const stride = strideFor(gap);
  return joints.filter((_, i) => i % stride === 0);
}

function strideFor(gap: number): number {
  for (let ten = 1; ; ten *= 10) {
    const stride = STRIDES.find((step) => step * ten * gap >= LEAST_GAP);
    if (stride !== undefined) return stride * ten;
  }
}
