/** What the numbers may be used for, one sentence each. */
export const does: readonly string[] = [
  'Finds toe, tilt and lift of two loudspeakers on a desk so that their axes meet the head, exactly for the numbers as measured, and says by how much the tape may be off.',
  'Shapes the stands and lays them out to be cut, with kerf, glue lines and veneer counted in, and describes the work.',
  'Says what is in the way: screens, walls, edges of the desk, a saw that does not reach.',
  'Says when a cabinet would tip or slide, by statics.',
  'Predicts the direct sound and one reflection from each surface, to compare one place with another.',
];

/** What they are not to be used for, one sentence each. */
export const doesNot: readonly string[] = [
  'Stands are for cabinets, upright or on their side, on what is level: a desk of any outline, a shelf, a riser, a floor stand’s plate, the floor. Wall mounts and anything hung are not covered, and whether a shelf and its fixings carry the load is not checked.',
  'Desk, shelves and screens count as thin rigid plates with their edges, walls as mirrors without any. What the desk does below some 250 Hz is not known.',
  'Below some 250 Hz the room decides what is heard, and of the room nothing is known here but its nearest surfaces (rule of thumb).',
  'Where the drivers of a bought loudspeaker were lined up is seldom published: its maker is assumed to have done so on the tweeter’s axis at 1 m. Where the design point is called not known, no advice is built on how the drivers add up.',
  'It reads responses measured elsewhere; it measures nothing itself and corrects no sound. Drivers are flat pistons, filters are those of the textbook.',
  'Wood, joints and glue are not checked for strength, and nothing is tested: hold the cabinet at the first try.',
];
