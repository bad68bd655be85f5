import { demoProject } from '$lib/project/demo.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Balance } from '$lib/stand/balance.ts';
import { buildStand, type StandBody } from '$lib/stand/build.ts';
import { balanceWith, type Site } from '$lib/stand/remedy.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';

/** One loudspeaker of the demo with some values set. */
export function siteWith(changes: Readonly<Record<string, unknown>> = {}, side: SideName = 'right'): Site {
  const of = project(changes);
  const [stock] = of.stock;
  if (!stock) throw new Error('a project holds at least one stock');
  return { speaker: of.speaker, layout: firstLayout(of), side, stock };
}

export function balanceAt(site: Site): Balance {
  const balance = balanceWith(site, {});
  if (!balance) throw new Error('expected a stand that can be had');
  return balance;
}

/** Pose and stand of a site that has them. */
export function bodyAt({ speaker, layout, side, stock }: Site): { pose: Pose; stand: StandBody } {
  const pose = placeSide(speaker, layout, side);
  if (!pose.ok) throw new Error(pose.faults.map(faultLine).join('; '));
  const stand = buildStand(pose.value, speaker, layout.stand, stock);
  if (!stand.ok) throw new Error(stand.faults.map(faultLine).join('; '));
  return { pose: pose.value, stand: stand.value };
}

/** The demo's cabinet on a level stand of given height and width, square to the desk. */
export const level = (lift: number, more: Readonly<Record<string, unknown>> = {}): Record<string, unknown> => ({
  '/layouts/0/aim/toe': { rule: 'straight' },
  '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
  '/layouts/0/stand': { lift, rods: null },
  ...more,
});

export const { width, height, depth, mass } = demoProject.speaker;
