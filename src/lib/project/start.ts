/**
 * Where a project of one's own starts: an ordinary desk with nothing on it but the pair, in round numbers that are plainly
 * not measured yet. Sound, so that there is a drawing to measure into.
 */
export const startProject = {
  format: 'wedgewright/project',
  version: 2,
  title: 'My desk',
  speaker: {
    width: 170,
    height: 280,
    depth: 220,
    drivers: [
      { name: 'tweeter', role: 'tweeter', diameter: 30, height: 210, entered: [] },
      { name: 'woofer', role: 'woofer', diameter: 120, height: 100, entered: [] },
    ],
    entered: [],
  },
  stock: [{ name: 'board', thickness: 3, sheet: { width: 600, height: 400 }, entered: [] }],
  layouts: [
    {
      name: 'as it is',
      desk: { height: 730, outline: { rule: 'rectangle', width: 1400, depth: 700 } },
      listener: { setback: 200, earHeight: 1200 },
      placement: { left: { x: -400, y: 350 }, right: { x: 400, y: 350 } },
      aim: { through: 'tweeter' },
      stand: { lift: 10 },
      entered: [],
    },
  ],
} as const;
