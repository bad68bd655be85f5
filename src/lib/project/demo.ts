/**
 * The project that opens first. The scene is made up: a bookbinder's desk by a window, two boxes built from a cutting
 * plan that a friend drew, and a board of MDF left over from a shelf. What is as usual is left to the fields' defaults.
 * Nothing of it was entered by whoever opens it.
 */
export const demoProject = {
  format: 'wedgewright/project',
  version: 2,
  title: 'Bindery desk',
  example: true,
  speaker: {
    width: 165,
    height: 270,
    depth: 205,
    mass: 4.2,
    drivers: [
      { name: 'tweeter', role: 'tweeter', diameter: 25, height: 205, entered: [] },
      { name: 'woofer', role: 'woofer', diameter: 95, height: 95, acousticDepth: 18, entered: [] },
    ],
    crossovers: [{ between: ['tweeter', 'woofer'], frequency: 2800, entered: [] }],
    entered: [],
  },
  stock: [{ name: 'MDF 3 mm', thickness: 3.05, sheet: { width: 600, height: 400 }, density: 880, entered: [] }],
  layouts: [
    {
      name: 'window side',
      desk: { height: 735, outline: { rule: 'rectangle', width: 1400, depth: 700 } },
      room: { walls: [{ name: 'behind', distance: 820 }] },
      monitors: [{ y: 520, width: 615, height: 365, bottom: 110, entered: [] }],
      listener: {
        setback: 180,
        earHeight: 1180,
        postures: [{ name: 'leaning in', setback: 60, earHeight: 1150 }],
      },
      placement: { left: { x: -430, y: 300 }, right: { x: 430, y: 300 } },
      aim: { through: 'tweeter' },
      stand: { lift: 12 },
      entered: [],
    },
  ],
} as const;
