/** Limits of the reader protocol, version 1, as firmware-protocol.md states them. */

/** Characters of a line, line end not counted. */
export const PROTOCOL_LONGEST_LINE = 500;
export const PROTOCOL_LONGEST_COMMAND = 60;
export const PROTOCOL_MOST_CHANNELS = 16;
/** Device clock: 32-bit counter of microseconds. */
export const PROTOCOL_CLOCK_WRAP_US = 2 ** 32;
/** Sequence number: 16-bit counter of samples. */
export const PROTOCOL_SEQUENCE_WRAP = 2 ** 16;
export const PROTOCOL_BAUD = 115_200;

/** Closed ranges and longest digits of the numbers on a line. */
export const TEMPERATURE_C = { least: -273.15, most: 3000, digits: 4, decimals: 6 } as const;
export const EMF_UV = { least: -20_000, most: 100_000, digits: 6, decimals: 6 } as const;
export const COLD_JUNCTION_C = { least: -55, most: 125, digits: 3, decimals: 6 } as const;
export const RATE_HZ = { least: 0.1, most: 1000, digits: 4, decimals: 6 } as const;

export interface NumberRange {
  readonly least: number;
  readonly most: number;
  readonly digits: number;
  readonly decimals: number;
}
