/** One of the two that make an inlay: the beam in its stock, and how thick that is. mm and radians. */
export interface InlayStock {
  readonly kerf: number;
  readonly taper: number;
  readonly thickness: number;
}

/** How much larger than its hole an inlaid panel is drawn, on every side, mm; negative for smaller. */
export interface InlayGrowth {
  /** Between finished sizes, where the files take the kerf into account. */
  readonly finished: number;
  /** Where both are cut along their drawn lines, kerf and all. */
  readonly onTheLine: number;
}

/**
 * Compensation for a panel laid into a hole so that at their tightest they are `gap` mm apart on each side. A panel put in
 * as it was cut widens towards the far face while its hole narrows; one cut mirrored and turned over leans the same way
 * as the hole, and fits tightly all through where both stocks are alike.
 */
export function inlayGrowth(hole: InlayStock, panel: InlayStock, turnedOver: boolean, gap: number): InlayGrowth {
  const lean = (stock: InlayStock): number => Math.tan(stock.taper);
  // From the finished outline outwards, at a depth from the face that both have in common.
  const holeEdge = (depth: number): number => lean(hole) * (hole.thickness / 2 - depth);
  const panelEdge = (depth: number): number => lean(panel) * (turnedOver ? 1 : -1) * (panel.thickness / 2 - depth);
  const deepest = Math.min(hole.thickness, panel.thickness);
  // Both edges are straight, so they come nearest at one of the two faces.
  const nearest = Math.min(...[0, deepest].map((depth) => holeEdge(depth) - panelEdge(depth)));
  const finished = nearest - gap;
  return { finished, onTheLine: finished + (hole.kerf + panel.kerf) / 2 };
}
