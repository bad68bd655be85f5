/**
 * `14:03`, as ISO 8601 has it and every country reads it. `at`: ms since 1970. The browser's own way would take as long as
 * two frames the first time, and this is written while somebody drags.
 */
export function timeText(at: number): string {
  const time = new Date(at);
  return [time.getHours(), time.getMinutes()].map((part) => String(part).padStart(2, '0')).join(':');
}

/** Day and time of something kept: `3 Mar 2031, 14:03`, or as people here write it. `at`: ms since 1970. */
export const momentText = (at: number): string =>
  new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** What a text takes in the browser: `12 kB`. `characters`: two bytes each. */
export const roomText = (characters: number): string => `${Math.max(1, Math.round((2 * characters) / 1000))} kB`;
