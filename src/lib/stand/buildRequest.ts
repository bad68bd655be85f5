import type { Pose } from '$lib/layout/pose.ts';
import type { Printer, Speaker, StandSettings, Workshop } from '$lib/project/project.ts';
import type { Board } from './body.ts';

/** What of a pose a stand depends on. */
export type Stance = Pick<Pose, 'side' | 'mark' | 'toe' | 'tilt' | 'lift'>;

/** What a build may take from the shop. */
export interface Shop {
  /** Every stock, its taper in radians: the lean of its cut edges from plumb, each side. */
  readonly stocks: readonly (Board & { readonly taper: number })[];
  readonly printer: Printer;
  readonly tools: Workshop;
}

/** One stand to build, with all that it may need. */
export interface BuildRequest {
  readonly stance: Stance;
  readonly speaker: Pick<Speaker, 'width' | 'depth'>;
  readonly settings: StandSettings;
  /** What the stand is cut from. */
  readonly board: Board;
  readonly shop: Shop;
}

/** The stock of that name, or the stand's own. */
export const boardNamed = ({ shop, board }: BuildRequest, name: string | null): Board =>
  shop.stocks.find((stock) => stock.name === name) ?? board;

/** Lean of the cut edges of a stock from plumb, each side; radians. */
export const taperOf = ({ shop }: BuildRequest, board: Board): number =>
  shop.stocks.find(({ name }) => name === board.name)?.taper ?? 0;
