const FOREIGN =
  /^(?:[mµμuk]?V|volts?|millivolts?|[mµμu]A|amps?|k?W|watts?|[kM]?(?:ohms?|Ω)|%|% ?RH|rh|psi[ag]?|m?bar|[kM]?Pa|rpm|k?Hz|kN|lbf?|kg|mm|counts?|digits?|bits?)$/i;

/** Steps of a unit, such as `0.1 °C`: numbers that are to be multiplied first. */
const STEPS = /^[x×*]?\s*\d+(?:[.,]\d+)?\s*[x×*]?\s*(?:°|deg(?:rees)?)?\s*[CFK]$/i;

/** A unit that is not one of temperature, in the brackets of a heading or all of a cell below it: `TC1 (mV)`, `[%]`. */
export function foreignUnit(heading: string): string | undefined {
  if (heading.length > 200) return undefined;
  const inside = [...heading.matchAll(/[[({]([^\])}]*)[\])}]/g)].map((found) => (found[1] ?? '').trim());
  return [...inside, heading.trim()].find((text) => FOREIGN.test(text) || STEPS.test(text));
}
