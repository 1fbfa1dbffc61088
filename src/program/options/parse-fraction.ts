import { OptionError } from './OptionError.ts';

/** A share above 0 and up to 1, such as 0.85 or 85 %. */
export function parseFraction(text: string, option: string): number {
  const match = /^(\d{1,3}(?:[.,]\d{1,6})?)\s*(%?)$/.exec(text.trim());
  const value =
    match === null
      ? Number.NaN
      : Number((match[1] as string).replace(',', '.')) / (match[2] === '%' ? 100 : 1);
  if (value > 0 && value <= 1) return value;
  throw new OptionError(
    `${option}: expected a share above 0 and at most 1, came "${text}"`,
    `Write for example ${option} 0.85 or ${option} 85%`,
  );
}
