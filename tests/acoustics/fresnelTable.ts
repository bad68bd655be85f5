/** v with C(v) and S(v) of Fresnel’s integrals, from the table of a handbook of mathematical functions. */
export const fresnelTable = [
  [-1, -0.7798934004, -0.4382591474],
  [-0.5, -0.4923442259, -0.0647324329],
  [0, 0, 0],
  [1, 0.7798934004, 0.4382591474],
  [2, 0.4882534061, 0.3434156784],
  [2.4, 0.5549614059, 0.6196899649],
  [3, 0.6057207893, 0.496312999],
  [5, 0.5636311887, 0.4991913819],
] as const;
