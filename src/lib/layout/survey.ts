/** Fifth, fiftieth and ninety-fifth percentile of a measure, mm. */
export interface Percentiles {
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
}

/** What the survey says of one sex, mm. */
export interface Measured {
  /** Ear (tragion) over the seat, sitting upright. */
  readonly overSeat: Percentiles;
  /** Back of the knee over the floor, barefoot: the height of a seat that fits. */
  readonly popliteal: Percentiles;
  /** The sum of the two person by person, barefoot and upright: percentiles do not add, so it has its own. */
  readonly overFloor: Percentiles;
  readonly stature: Percentiles;
  /** Ear over the seat by stature: slope · stature + constant. */
  readonly byStature: { readonly slope: number; readonly constant: number };
  /** Height of the heels that the survey's figures with shoes take. */
  readonly shoes: number;
}

export const SURVEY_SOURCE =
  'ANSUR II (2012), Natick/TR-15/007, computed from its two public files: soldiers of the US Army, so fitter and younger than most';

/** Shoes and the usual 40 mm of slump. */
export const SHOES_AND_SLUMP_SOURCE = 'City University of Hong Kong, online anthropometry';

const percentiles = (p5: number, p50: number, p95: number): Percentiles => ({ p5, p50, p95 });

export const survey = {
  man: {
    overSeat: percentiles(731, 786, 845),
    popliteal: percentiles(390, 430, 471),
    overFloor: percentiles(1136, 1216, 1301),
    stature: percentiles(1648, 1755, 1870),
    byStature: { slope: 0.38785, constant: 105.99 },
    shoes: 25,
  },
  woman: {
    overSeat: percentiles(677, 730, 784.75),
    popliteal: percentiles(350, 387, 428),
    overFloor: percentiles(1042, 1118, 1198),
    stature: percentiles(1525, 1626, 1740),
    byStature: { slope: 0.37124, constant: 125.6 },
    shoes: 45,
  },
} as const satisfies Record<string, Measured>;

export type Sex = keyof typeof survey;
