const SECONDS = /^(-?)(\d{1,10})\.(\d{6})$/;

/** Whole microseconds from `12.500001`; null when the text is no such time. */
export function parseArrival(text: string): number | null {
  const match = SECONDS.exec(text);
  if (match === null) return null;
  const us = Number(match[2]) * 1_000_000 + Number(match[3]);
  if (!Number.isSafeInteger(us)) return null;
  return match[1] === '-' && us !== 0 ? -us : us;
}
