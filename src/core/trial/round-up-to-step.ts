/**
 * Seconds rounded up to the press timer's step: first to the nearest millisecond, so that float dust
 * (173.00000000000003) adds no second. Example: (173.5, 1) → 174; (174.0000001, 1) → 174.
 */
export function roundUpToStep(seconds: number, stepS: number): number {
  const milliseconds = Math.round(seconds * 1000);
  const stepMs = Math.max(1, Math.round(stepS * 1000));
  return (Math.ceil(milliseconds / stepMs) * stepMs) / 1000;
}
