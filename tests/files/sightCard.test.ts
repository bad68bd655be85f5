import { describe, expect, test } from 'vitest';
import { primitivesBox } from '$lib/drawing/primitive.ts';
import { MARGIN, papers } from '$lib/files/paper.ts';
import { sheetPdf } from '$lib/files/sheetPdf.ts';
import { sheetSvg } from '$lib/files/sheetSvg.ts';
import { SIGHT_CARE } from '$lib/files/sightCare.ts';
import { sightCard } from '$lib/files/sightCard.ts';
import { safeZoneOf } from '$lib/solution/safeZone.ts';
import { MM_PER_INCH } from '$lib/project/units.ts';
import type { Project } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan as planOf } from '$lib/solution/plan.ts';
import { firstLayout, project } from '../projects.ts';

function solved(of: Project): Plan {
  const made = planOf(of, firstLayout(of));
  if (!made.ok) throw new Error('it has an answer');
  return made.value;
}

const cards = (['A4', 'Letter'] as const).flatMap((paper) =>
  [{}, { '/display': { length: 'in' } }, { '/layouts/0/listener/offset': 60 }].map((edits) => ({
    paper,
    plan: solved(project(edits)),
  })),
);

const groupOf = (card: ReturnType<typeof sightCard>, id: string) =>
  card.groups.find((group) => group.id === id)?.primitives ?? [];

describe('the sight card', () => {
  test.each(cards)('lies within the margins of $paper', ({ paper, plan }) => {
    const card = sightCard(plan, paper);
    const { width, height } = papers[paper];
    const [left, top, right, bottom] = primitivesBox(card.groups.flatMap(({ primitives }) => primitives));
    expect(left).toBeGreaterThanOrEqual(MARGIN - 1);
    expect(right).toBeLessThanOrEqual(width - MARGIN + 1);
    expect(top).toBeGreaterThanOrEqual(MARGIN - 1);
    expect(bottom).toBeLessThanOrEqual(height - MARGIN + 1);
  });

  test.each(cards)('keeps heading, target, notes and bar apart', ({ paper, plan }) => {
    const card = sightCard(plan, paper);
    const box = (id: string) => primitivesBox(groupOf(card, id));
    expect(box('heading')[3]).toBeLessThanOrEqual(box('safe-zone')[1]);
    expect(Math.max(box('rings')[3], box('safe-zone')[3])).toBeLessThanOrEqual(box('notes')[1]);
    expect(box('notes')[3]).toBeLessThanOrEqual(box('scale-bar')[1]);
  });

  test('has the right loudspeaker’s spot at the left of the left one’s where it lies to the right of the head', () => {
    const plan = solved(project({ '/layouts/0/aim/toe': { rule: 'to-ear' } }));
    expect(plan.sides.right.nearest.x).toBeGreaterThan(plan.head.x + 10);
    const [left, , right] = groupOf(sightCard(plan, 'A4'), 'spots').flatMap((one) => (one.kind === 'circle' ? [one.centre[0]] : [])); // prettier-ignore
    expect(right).toBeLessThan((left ?? NaN) - 20);
  });

  test.each(cards)('is true to scale: rings, safe zone and spots', ({ paper, plan }) => {
    const card = sightCard(plan, paper);
    const unit = plan.project.display.length === 'in' ? MM_PER_INCH : 1;
    const rings = groupOf(card, 'rings').flatMap((one) => (one.kind === 'circle' ? [one] : []));
    const sizes = groupOf(card, 'rings').flatMap((one) =>
      one.kind === 'text' && /^\d/.test(one.text) ? [Number(one.text)] : [],
    );
    expect(rings.map(({ radius }) => radius)).toEqual(sizes.map((size) => size * unit));
    const [x, y] = rings[0]?.centre ?? [NaN, NaN];
    const zone = safeZoneOf(plan);
    const [box] = groupOf(card, 'safe-zone');
    if (box?.kind !== 'line') throw new Error('the zone is a box');
    const xs = box.points.map(([at]) => at);
    // Wider zones end at the card's border.
    const most = (papers[paper].width - 2 * MARGIN) / 2;
    // The print faces the loudspeakers: right from the chair is at the left on it.
    expect(x - Math.min(...xs)).toBeCloseTo(Math.min(zone.right, most), 9);
    expect(Math.max(...xs) - x).toBeCloseTo(Math.min(zone.left, most), 9);
    // The baffle's own light goes through the head's middle where the aim does.
    const crosses = groupOf(card, 'spots').flatMap((one) => (one.kind === 'circle' ? [one.centre] : []));
    expect(plan.sides.right.miss).toBeLessThan(1e-6);
    for (const [a, b] of crosses.filter((_, index) => index % 2 === 0)) {
      expect(Math.hypot(a - x, b - y)).toBeLessThan(1e-6);
    }
  });

  test('says where it goes, how to handle a pointer, and at what height each spot is', () => {
    const plan = solved(project());
    const svg = sheetSvg(sightCard(plan, 'A4'));
    for (const care of SIGHT_CARE) expect(svg).toContain(care);
    expect(svg).toMatch(/laser class 1 or 2 \(IEC 60825-1\)/);
    const { head } = plan;
    expect(svg).toContain(`${-head.y}\u202fmm before the desk’s front edge`);
    expect(svg).toContain(`${head.z}\u202fmm over the desk`);
    expect(svg).toMatch(/width="210mm" height="297mm"/);
    expect(new TextDecoder('latin1').decode(sheetPdf(sightCard(plan, 'A4')).slice(0, 8))).toMatch(/^%PDF-1\./);
  });
});
