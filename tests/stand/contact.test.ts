import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vec3 } from '$lib/geometry/point.ts';
import { marginsOf } from '$lib/stand/tipping.ts';
import { numberFrom } from '../numbers.ts';
import { balanceAt, bodyAt, siteWith } from './sites.ts';

const across = (more: Record<string, unknown> = {}): Record<string, unknown> => ({
  '/layouts/0/stand': { lift: 40, base: 'square-to-desk', rods: null },
  ...more,
});

describe('a cabinet that lies across its stand', () => {
  it('tips over the nearest edge of what both share', () => {
    fc.assert(
      fc.property(numberFrom(-15, 60), numberFrom(-12, 12), numberFrom(90, 240), (toe, tilt, width) => {
        const site = siteWith(
          across({
            '/layouts/0/aim/toe': { rule: 'as-set', degrees: toe },
            '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt },
            '/layouts/0/stand': { lift: 90, base: 'square-to-desk', rods: null, width },
          }),
        );
        const { pose, stand } = bodyAt(site);
        const { contact, cabinet } = balanceAt(site);
        const points = stand.contact ?? [];
        const height = (x: number, y: number): number =>
          pose.frontEdgeHeight -
          (pose.bottomNormal.x * (x - pose.mark.x) + pose.bottomNormal.y * (y - pose.mark.y)) / pose.bottomNormal.z;
        const corners = points.map(([x, y]) => vec3(x, y, height(x, y)));
        const angles = corners.map((from, i) => {
          const edge = [from, corners[(i + 1) % corners.length] ?? from] as const;
          const all = { front: edge, rear: edge, inboard: edge, outboard: edge };
          return marginsOf(cabinet, all, pose.bottomNormal).front.angle;
        });
        const stated = [contact.front, contact.rear, contact.inboard, contact.outboard].map(({ angle }) => angle);
        expect(Math.min(...stated)).toBeCloseTo(Math.min(...angles), 9);
      }),
    );
  });

  it('straight ahead, has the edges of a turned stand', () => {
    const straight = { '/layouts/0/aim/toe': { rule: 'straight' } };
    const [square, turned] = [
      balanceAt(siteWith(across(straight))),
      balanceAt(siteWith({ ...straight, '/layouts/0/stand': { lift: 40, rods: null } })),
    ];
    for (const edge of ['front', 'rear', 'inboard', 'outboard'] as const) {
      expect(square.contact[edge].angle).toBeCloseTo(turned.contact[edge].angle, 9);
      expect(square.base[edge].angle.least).toBeCloseTo(turned.base[edge].angle.least, 9);
    }
  });
});
