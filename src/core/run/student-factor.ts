/**
 * How much wider a 95 % interval must be when the noise was estimated with few degrees of freedom:
 * t(0.975, ν) ÷ 1.960, by the series of Abramowitz and Stegun 26.7.5 (within 1 % from ν = 3 on, from memory).
 * Under ν = 3 the table's t itself (12.706 and 4.303) is used.
 */
export function studentFactor(degreesOfFreedom: number): number {
  const z = 1.959964;
  if (degreesOfFreedom <= 1) return 12.706 / z;
  if (degreesOfFreedom < 3) return (4.303 + (3.182 - 4.303) * Math.max(0, degreesOfFreedom - 2)) / z;
  const v = degreesOfFreedom;
  const z2 = z * z;
  return (
    1 +
    (z2 + 1) / (4 * v) +
    (5 * z2 * z2 + 16 * z2 + 3) / (96 * v * v) +
    (3 * z2 ** 3 + 19 * z2 * z2 + 17 * z2 - 15) / (384 * v ** 3)
  );
}
