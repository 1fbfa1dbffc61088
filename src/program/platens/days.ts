import { OptionError } from '../options/OptionError.ts';

/** Days from one to another, both counted in; null where open. ISO 8601 days of this computer's time zone. */
export interface Days {
  readonly from: string | null;
  readonly to: string | null;
}

/** "2026-03-01/2026-06-30", open at one end "2026-07-01/", "/2026-06-30", or one day. */
export function parseDays(text: string, option: string): Days {
  const parts = text.trim().split('/');
  const [from = '', to = parts.length === 1 ? from : ''] = parts.map((part) => part.trim());
  if (
    parts.length > 2 ||
    (from === '' && to === '') ||
    ![from, to].every((day) => day === '' || isDay(day))
  ) {
    throw new OptionError(
      `${option}: expected days, came "${text}"`,
      `Write for example ${option} 2026-03-01/2026-06-30, /2026-06-30 or 2026-07-01/`,
    );
  }
  if (from !== '' && to !== '' && from > to)
    throw new OptionError(`${option}: ${from} comes after ${to}`, 'Write the earlier day first');
  return { from: from === '' ? null : from, to: to === '' ? null : to };
}

/** Whether a moment (ISO 8601) lies on these days. */
export function isWithin(moment: string, { from, to }: Days): boolean {
  const day = localDay(new Date(moment));
  return day !== null && (from === null || day >= from) && (to === null || day <= to);
}

function isDay(text: string): boolean {
  const moment = new Date(`${text}T00:00:00Z`);
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) &&
    !Number.isNaN(moment.getTime()) &&
    moment.toISOString().startsWith(text)
  );
}

function localDay(moment: Date): string | null {
  if (Number.isNaN(moment.getTime())) return null;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}
