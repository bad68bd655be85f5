const DEFAULT_PORT = 4173;

/**
 * The port asked for in the environment variable PORT.
 * @param {string | undefined} text unset or empty means 4173
 * @returns {number} a whole number from 1 to 65535
 * @throws {RangeError} when it is anything else; the message names the value and what was expected
 */
export function portFrom(text) {
  if (text === undefined || text === '') return DEFAULT_PORT;
  const port = Number(text);
  if (!/^\d+$/.test(text) || port < 1 || port > 65_535) {
    throw new RangeError(`PORT: expected a whole number from 1 to 65535, got ${JSON.stringify(text)}`);
  }
  return port;
}
