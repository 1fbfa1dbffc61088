import { expect, it } from 'vitest';
import { referenceSoak } from '../../../src/core/conditions/reference-soak.ts';
import { sampleMean } from '../../../src/core/statistics/sample-mean.ts';
import { PLATEN_MEAN_C, simulatedRun, TARGET_C } from '../what-if/simulated-run.ts';

/** The same parts, closed from starts of 20 to 36 °C between platens of −4 to +4 °C about their set point. */
const CONDITIONS = [
  [20, 0],
  [28, -4],
  [36, 2],
  [24, 4],
  [32, -2],
  [22, 3],
] as const;

it('puts simulated runs made at other starts and platens on the reference within 0.2 s of the same parts closed there, where raw they lie up to 3.4 s off', () => {
  const rows = CONDITIONS.map(([startC, movedC], at) => {
    const made = simulatedRun(at + 1, { startC, platenC: PLATEN_MEAN_C + movedC });
    const there = simulatedRun(at + 1, { startC: 24 });
    const own = made.platenAtClosingC.upper! - there.platenAtClosingC.upper!;
    const platenC = (made.platenAtClosingC.upper! + made.platenAtClosingC.lower!) / 2 - own;
    const soak = referenceSoak(made, TARGET_C, { startC: there.startC!, platenC })!;
    return { rawS: made.soakTimeS! - there.soakTimeS!, leftS: soak.soakAtReferenceS - there.soakTimeS! };
  });
  console.info(
    rows.map(({ rawS, leftS }) => `raw ${rawS.toFixed(2)} s, at reference ${leftS.toFixed(2)} s`).join('; '),
  );
  expect(Math.max(...rows.map(({ rawS }) => Math.abs(rawS)))).toBeGreaterThan(2);
  for (const { leftS } of rows) expect(Math.abs(leftS)).toBeLessThan(0.2);
  expect(Math.abs(sampleMean(rows.map(({ leftS }) => leftS)))).toBeLessThan(0.1);
});
