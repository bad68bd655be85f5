import { expect } from 'vitest';
import type { Workshop } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/body.ts';
import { coverIn, type Where } from './asked.ts';
import { carryOut } from './bench.ts';
import { expectAsPlanned, onDesk, woodUnder, type Seen } from './expected.ts';
import { expectStrip, frontOf, workBlock, type Worked } from './sawing.ts';
import { cornersOf } from './solid.ts';

/** Chords for arcs that a sanded slope cuts, and as many sections as are looked at of a sanded layer. */
const SHARE_OF_VOLUME = 1e-6;

/** Makes a stand by its steps and parts, and holds what comes out against what was asked for and planned. */
export function examine(body: StandBody, where: Where, tools: Workshop): Seen {
  const { stance, settings } = where;
  const bit = body.build === 'solid' ? null : tools.router.bit;
  const worked = body.build === 'solid' ? workBlock(body, stance.side, tools) : null;
  const made = worked ?? carryOut(body, { glue: settings.glue, onRight: stance.side === 'right', bit });
  const seen = expectAsPlanned(made, body, where, bit);
  const off = Math.abs(made.volume / body.volume - 1);
  expect({ made: made.volume, planned: body.volume, near: off < SHARE_OF_VOLUME }).toMatchObject({ near: true });
  if (worked) expectSlope(worked, where, body);
  return worked?.strip ? { ...seen, stop: expectStrip(worked.strip, where) } : seen;
}

/** The sawn wedge, before it is milled and rounded, reaches up to the cabinet and no further. */
function expectSlope({ wedge, width }: Worked, where: Where, body: StandBody): void {
  const [place, bottom] = [onDesk(body, width, where), woodUnder(where)];
  const base = where.settings.feet + coverIn(where).base;
  const front = frontOf(wedge);
  for (const { x, y, z } of cornersOf(wedge)) {
    if (z < 1e-6) continue;
    const across = where.stance.side === 'right' ? x : width - x;
    expect(z + base).toBeCloseTo(bottom(...place(across, y - front)), 6);
  }
}
