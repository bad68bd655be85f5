/**
 * The workshop that is reckoned with until its owner says otherwise: a table saw of the common size, no band saw, sheets
 * not cut by a router, nothing known of the glue. A blade of 250 mm (10 in) passes some 80 mm (3⅛ in) and tilts to 45°, to
 * the left on most saws: common practice, no source.
 */
export const COMMON_SHOP = {
  saw: { depth: 80, tiltsMost: 45, tilts: 'left' },
  bandSaw: null,
  router: { bit: null, tab: null },
  glue: { line: null, open: null, clamp: null, clamps: null, opening: null },
} as const;
