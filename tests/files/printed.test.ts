import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { volumeOf } from '$lib/files/mesh.ts';
import { bodyMesh } from '$lib/files/solid.ts';
import { printerOf } from '$lib/project/printer.ts';
import { buildStand } from '$lib/stand/build.ts';
import type { Printed } from '$lib/stand/body.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';
import { meshSlack } from './meshSlack.ts';

const common = printerOf({ printer: null });

/** What a skinned stand of the demo's cabinet has printed. */
function printedFor(changes: Record<string, unknown>, bed = common.bed): readonly Printed[] {
  const of = project({ '/layouts/0/stand/build': 'skinned', ...changes });
  const [board] = of.stock;
  if (!board) throw new Error('the demo has a stock');
  const stance = {
    side: 'left',
    mark: { x: -430, y: 300, z: 0 },
    toe: radians(25),
    tilt: radians(8),
    lift: 12,
  } as const;
  const shop = { stocks: [], printer: { ...common, bed }, tools: COMMON_SHOP };
  const built = buildStand(stance, of.speaker, firstLayout(of).stand, board, shop);
  if (!built.ok) throw new Error(built.faults.map(faultLine).join('; '));
  return built.value.printed;
}

describe('printed cores become closed bodies of the volume they are reckoned with', () => {
  const pockets = { '/layouts/0/stand/pockets': { count: 2, diameter: 10, depth: 40 } };
  const relief = { '/layouts/0/stand/relief': {} };

  it.each<[string, () => readonly Printed[], readonly string[]]>([
    ['in one piece', () => printedFor({}), ['core']],
    ['with pockets', () => printedFor(pockets), ['core']],
    ['with windows', () => printedFor(relief), ['core']],
    ['halved across a high core', () => printedFor({}, { x: 220, y: 220, z: 120 }), ['core-half']],
    [
      'halved, with pockets in one half',
      () => printedFor(pockets, { x: 220, y: 220, z: 120 }),
      ['core-half', 'core-half-pockets'],
    ],
    ['in keyed halves of a long core', () => printedFor({}, { x: 150, y: 150, z: 250 }), ['core-front', 'core-rear']],
  ])('%s', (_, make, names) => {
    const printed = make();
    expect(printed.map(({ name }) => name)).toEqual(names);
    for (const body of printed) {
      expect(Math.abs(volumeOf(bodyMesh(body)) - body.volume)).toBeLessThan(meshSlack(body));
    }
  });
});
