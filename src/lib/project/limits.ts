/** The longest name, in UTF-16 units. */
export const LONGEST_TEXT = 200;

/** The most layouts one project holds. */
export const MOST_LAYOUTS = 40;
