import type { Cutter, Project, Stock } from '$lib/project/project.ts';

type Beam = Pick<Cutter, 'kerf' | 'taper'>;

/** The cutter as it is in one stock: its kerf and taper are the stock's own where that has some. Degrees, as in the project. */
export const cutterFor = <Settings extends Beam>(stock: Pick<Stock, 'kerf' | 'taper'>, cutter: Settings): Settings => ({
  ...cutter,
  kerf: stock.kerf ?? cutter.kerf,
  taper: stock.taper ?? cutter.taper,
});

/** What cuts the sheets: where that is a router, its bit's diameter is the kerf of every stock that names none. */
export const cutterOf = ({ cutter, shop }: Pick<Project, 'cutter' | 'shop'>): Cutter => ({
  ...cutter,
  kerf: shop.router.bit ?? cutter.kerf,
});
