/**
 * The project that opens first. The scene is made up: a bookbinder's desk by a window, two boxes built from a cutting
 * plan that a friend drew, and a board of MDF left over from a shelf.
 */
export const demoProject = {
  format: 'wedgewright/project',
  version: 1,
  title: 'Bindery desk',
  display: { length: 'mm' },
  speaker: {
    width: 165,
    height: 270,
    depth: 205,
    baffleRake: 0,
    mass: 4.2,
    mirrored: true,
    drivers: [
      { name: 'tweeter', role: 'tweeter', diameter: 25, height: 205, offset: 0, acousticDepth: 0 },
      { name: 'woofer', role: 'woofer', diameter: 95, height: 95, offset: 0, acousticDepth: 18 },
    ],
    crossovers: [{ between: ['tweeter', 'woofer'], frequency: 2800, alignment: 'in-phase' }],
  },
  stock: [{ name: 'MDF 3 mm', thickness: 3.05, sheet: { width: 600, height: 400 }, density: 880 }],
  cutter: { kerf: 0.2, taper: 0, spacing: 2, margin: 5 },
  layouts: [
    {
      name: 'window side',
      air: { temperature: 20 },
      desk: { width: 1400, depth: 700, height: 735, wallGap: 120 },
      monitors: [{ x: 0, y: 520, width: 615, height: 365, bottom: 110, depth: 40 }],
      listener: {
        offset: 0,
        setback: 180,
        earHeight: 1180,
        headWidth: 152,
        postures: [{ name: 'leaning in', setback: 60, earHeight: 1150 }],
      },
      placement: { left: { x: -430, y: 300 }, right: { x: 430, y: 300 } },
      aim: { through: 'tweeter', toe: { rule: 'to-head' }, tilt: { rule: 'tilt-to-ear' } },
      stand: { lift: 12, build: 'stacked' },
    },
  ],
} as const;
