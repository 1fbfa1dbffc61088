/** A place on a picture to a tenth of its unit: finer than anyone sees, and short in a file. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;
