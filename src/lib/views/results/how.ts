/** Which formula each row of the tables comes from, by the table's title and the row's name. Others are given, not found. */
export const how: Readonly<Record<string, string>> = {
  'Aim/Toe': 'toe',
  'Aim/Tilt': 'tilt',
  'Aim/Axis elevation': 'elevation',
  'Aim/Lift': 'lift',
  'Aim/Front edge over desk': 'front-edge',
  'Aim/Rear edge over desk': 'rear-edge',
  'Aim/Aimed point over desk': 'aimed-height',
  'Aim/Miss at the head': 'miss',
  'Postures/Head off the axis': 'posture-off-axis',
  'Postures/Miss at this head': 'posture-miss',
  'Postures/Angle at this head': 'posture-angle',
  'Triangle/Angle at the head': 'angle',
  'Triangle/Between aimed points': 'base',
  'Triangle/Left to head': 'left-distance',
  'Triangle/Right to head': 'right-distance',
  'Triangle/Arrival difference, left − right': 'time',
  'Triangle/Level difference, right − left': 'level',
  'Screens/Eyes to its middle': 'screen-distance',
  'Screens/Seen under': 'screen-angle',
  'Stand/Slices': 'layers',
  'Stand/Finished width': 'width',
  'Stand/Width uncertainty': 'width-spread',
  'Stand/Width shortfall': 'width-shortfall',
  'Stand/Height at the front': 'front-height',
  'Stand/Height at the rear': 'rear-height',
  'Stand/Rod hole': 'rod-hole',
  'Stand/Rod-hole edge distance': 'rod-edge',
  'Stand/Mass': 'mass',
  'Drivers/To the head': 'driver-distance',
  'Drivers/Head off its axis': 'off-axis',
  'Drivers/Over the desk': 'driver-height',
  'Crossovers/Path difference, lower − upper': 'path',
  'Crossovers/Phase': 'phase',
  'Crossovers/Sum at the crossover': 'sum',
  'Reflections/Path difference': 'detour',
  'Reflections/Delay': 'delay',
  'Reflections/Relative level': 'quieter',
  'Reflections/First notch': 'notch',
};

/** A number that somebody wants explained: its formula, and which of several entries it is of. */
export interface Asked {
  readonly title: string;
  readonly id: string;
  readonly index: number;
}
