const DAY_US = 86_400e6;
/** `0d 00h 01m 02.5s`, `1h 2min`, `PT1M2.5S`; days, hours, minutes, seconds, each of them once. */
const SPAN =
  /^(?:P(?=[\dT]))?(?:(\d{1,4}) ?d(?:ays?)?)?[ ,T]*(?:(\d{1,6}) ?h(?:(?:ou)?rs?)?)?[ ,]*(?:(\d{1,7}) ?m(?:in(?:utes?)?)?)?[ ,]*(?:(\d{1,9})(?:[.,](\d{1,9}))? ?s(?:ec(?:onds?)?)?)?$/i;
/** `1 02:00:03`, `1d 02:00:03`, `1.02:00:03`: days in front of a clock. */
const DAYS_AND_CLOCK = /^(\d{1,4})(?: ?d(?:ays?)?,? ?| |\.)(\d{1,2}):(\d{2}):(\d{2})(?:[.,](\d{1,9}))?$/i;
const MILLISECONDS = /^(\d{1,15})(?:[.,](\d{1,6}))? ?ms$/i;
/** Alone, `5 m` could be metres and `3 d` a name. */
const ONE_IN_DOUBT = /^P?\d+ ?[dm]$/i;

/** Time gone by, with its units or with days in front of a clock, µs, and the smallest step written. Undefined for anything else. */
export function readSpan(text: string): { readonly timeUs: number; readonly stepUs: number } | undefined {
  if (text.length > 40 || !/\d/.test(text)) return undefined;
  const [, milliseconds, part = ''] = MILLISECONDS.exec(text) ?? [];
  if (milliseconds !== undefined)
    return {
      timeUs: Math.round(Number(`${milliseconds}.${part || 0}`) * 1e3),
      stepUs: 1e3 / 10 ** part.length,
    };
  const clock = DAYS_AND_CLOCK.exec(text);
  if (clock && (Number(clock[2]) > 23 || Number(clock[3]) > 59 || Number(clock[4]) > 59)) return undefined;
  const found = clock ?? (ONE_IN_DOUBT.test(text) ? null : SPAN.exec(text));
  if (!found) return undefined;
  const [, days, hours, minutes, seconds, fraction = ''] = found;
  const wholeS = Number(days ?? 0) * 86_400 + Number(hours ?? 0) * 3600 + Number(minutes ?? 0) * 60;
  return {
    timeUs: Math.round((wholeS + Number(`${seconds ?? 0}.${fraction || 0}`)) * 1e6),
    stepUs:
      seconds !== undefined
        ? 1e6 / 10 ** fraction.length
        : minutes !== undefined
          ? 60e6
          : hours !== undefined
            ? 3600e6
            : DAY_US,
  };
}
