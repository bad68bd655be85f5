/** `14:03`, or as people here write it. `at`: ms since 1970. */
export const timeText = (at: number): string =>
  new Date(at).toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' });

/** Day and time of something kept: `3 Mar 2031, 14:03`, or as people here write it. `at`: ms since 1970. */
export const momentText = (at: number): string =>
  new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** What a text takes in the browser: `12 kB`. `characters`: two bytes each. */
export const roomText = (characters: number): string => `${Math.max(1, Math.round((2 * characters) / 1000))} kB`;
