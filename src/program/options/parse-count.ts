import { OptionError } from './OptionError.ts';

/** A whole number within limits, such as `--runs 5`. */
export function parseCount(
  text: string,
  option: string,
  { least, most }: { least: number; most: number },
): number {
  const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new OptionError(
    `${option}: expected a whole number from ${least} to ${most}, came "${text}"`,
    `Write for example ${option} ${least}`,
  );
}
