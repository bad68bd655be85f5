/** The longest name, in UTF-16 units. */
export const LONGEST_TEXT = 200;

/** The most layouts one project holds. */
export const MOST_LAYOUTS = 50;

/** The most postures beside the seat. */
export const MOST_POSTURES = 12;

/**
 * The most parts of one layout that can be locked in place. A wide pair of stands has some 300; of more than these, checking each
 * against its neighbours would take longer than the search.
 */
export const MOST_LOCKED = 2000;

/** The most readings of one finished stand: far more than anybody takes, and still fitted at once. */
export const MOST_READINGS = 40;

/** The most entries of a layout's record: a pair of stands that is read every month for years. */
export const MOST_RECORDS = 200;

/** The most measured responses of a layout: the pair and each, near and at the seat, before and after. Each is some 3 kB of the file. */
export const MOST_HEARD = 12;

/** The fewest and the most cells of the grid that a measured response is kept in: an octave, and from 20 Hz to 20 kHz. */
export const LEAST_CELLS = 48;
export const ALL_CELLS = 479;

/** The most walls of one room: more corners than any has that a desk stands in. */
export const MOST_WALLS = 12;

/** The most surfaces beside the desk: one under each loudspeaker, and shelves above and beside them. */
export const MOST_SURFACES = 12;

/** The most corners of a desk that is drawn corner by corner. */
export const MOST_CORNERS = 60;
