import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import { printerOf } from '$lib/project/printer.ts';
import type { Board, StandBody } from './body.ts';
import { buildNamed } from './builds/builds.ts';
import type { BuildRequest, Shop, Stance } from './buildRequest.ts';
import { leftOut } from './leftOut.ts';
import { built, type Outcome } from './outcome.ts';
import { routerFault } from './routed.ts';

export type { StandBody } from './body.ts';
export type { Stance } from './buildRequest.ts';

/**
 * The stand under one cabinet, built as its settings say. Refused as unsound when its thin end is too thin, without an
 * answer when a thickness, a hole or a detail cannot be had, or a router’s bit cannot cut its parts even with their inner
 * corners relieved; pointers are relative to the layout.
 *
 * @param board What the stand is cut from.
 * @param shop Other stocks and the printer; by default nothing but the board, a common printer and common tools.
 */
export function buildStand(
  stance: Stance,
  speaker: BuildRequest['speaker'],
  settings: BuildRequest['settings'],
  board: Board,
  shop: Shop = { stocks: [], printer: printerOf({ printer: null }), tools: COMMON_SHOP },
): Outcome<StandBody> {
  const build = buildNamed(settings.build);
  const body = build.body({ stance, speaker, settings, board, shop });
  if (!body.ok) return body;
  const { bit } = shop.tools.router;
  const refused = bit === null ? null : routerFault(body.value.pieces, bit);
  return refused ?? built({ ...body.value, notes: [...body.value.notes, ...leftOut(settings, build)] });
}
