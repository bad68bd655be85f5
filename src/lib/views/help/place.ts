/** A box on the screen, px. */
export interface ScreenBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const GAP = 6;
const BORDER = 8;

/**
 * Where a card stands that explains something: under it, above it where there is no room below, and always within the
 * screen.
 */
export function placeBeside(
  anchor: ScreenBox,
  card: Pick<ScreenBox, 'width' | 'height'>,
  screen: Pick<ScreenBox, 'width' | 'height'>,
): { readonly left: number; readonly top: number } {
  const below = anchor.top + anchor.height + GAP;
  const above = anchor.top - GAP - card.height;
  const fits = below + card.height + BORDER <= screen.height;
  const within = (at: number, size: number, whole: number): number =>
    Math.max(BORDER, Math.min(at, whole - size - BORDER));
  return {
    left: within(anchor.left, card.width, screen.width),
    top: within(fits || above < BORDER ? below : above, card.height, screen.height),
  };
}
