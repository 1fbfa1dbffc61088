import type { ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** Probes at rest agree within this, °C of difference: twice the standard tolerance of new wire, ±2.2 °C by ASTM E230. */
export const AGREE_AT_REST_C = 4.4;
/** Faster than this nothing is at rest, °C/s. Judgement. */
const AT_REST_C_PER_S = 0.2;

/** All probes on the bond line, and one that measures the room if the part is at rest, tell the same temperature. */
export function checkAgreement({ channels }: ReadyFacts): ReadyFinding {
  const bondLine = channels.filter((one) => one.role.startsWith('bond-line') && one.meanC !== null);
  if (channels.filter((one) => one.role.startsWith('bond-line')).length < 2)
    return { state: 'not-checked', code: 'one-probe', facts: {} };
  if (bondLine.length < 2 || bondLine.some((one) => Math.abs(one.driftCPerS ?? 1) > AT_REST_C_PER_S))
    return { state: 'wait', code: 'probes-moving', facts: {} };
  const sorted = [...bondLine].sort((a, b) => (a.meanC ?? 0) - (b.meanC ?? 0));
  const [coldest, hottest] = [sorted[0], sorted.at(-1)];
  const differenceC = (hottest?.meanC ?? 0) - (coldest?.meanC ?? 0);
  return differenceC <= AGREE_AT_REST_C
    ? { state: 'ready', code: 'probes-agree', facts: { differenceC, limitC: AGREE_AT_REST_C } }
    : {
        state: 'not-ready',
        code: 'probes-apart',
        facts: {
          differenceC,
          limitC: AGREE_AT_REST_C,
          hotter: hottest?.channel ?? 0,
          colder: coldest?.channel ?? 0,
        },
      };
}
