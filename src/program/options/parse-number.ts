import { OptionError } from './OptionError.ts';

/** A plain number within limits, such as `--speed 20`. */
export function parseNumber(
  text: string,
  option: string,
  { least, most }: { least: number; most: number },
): number {
  const value = /^\d+(?:[.,]\d+)?$/.test(text.trim()) ? Number(text.replace(',', '.')) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new OptionError(
    `${option}: expected a number from ${least} to ${most}, came "${text}"`,
    `Write for example ${option} ${Math.max(1, least)}`,
  );
}
