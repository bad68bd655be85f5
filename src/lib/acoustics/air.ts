/** Zero of the Celsius scale, K. */
const ZERO_CELSIUS = 273.15;
/** The reference temperature of ISO 9613-1, 20 °C, in K. */
const REFERENCE = 293.15;
/** Speed of sound at the reference temperature, m/s. */
const AT_REFERENCE = 343.2;

/**
 * Speed of sound in air, m/s, at a temperature in °C: 343.2·√(T/293.15 K), the form of ISO 9613-1. Humidity is left
 * out: at 20 °C it adds less than half a per cent (from memory). Not a number under −273.15 °C; a parsed project holds
 * −30 to 60 °C.
 */
export const speedOfSound = (temperature: number): number =>
  AT_REFERENCE * Math.sqrt((temperature + ZERO_CELSIUS) / REFERENCE);
