/**
 * Step of a counter from one value to the next, taking the shorter way round where the counter wraps
 * (`wrap` = its period): in (−wrap/2, wrap/2]. Without a wrap the plain difference. Same unit in and out.
 */
export function signedStep(from: number, to: number, wrap: number | null): number {
  const step = to - from;
  if (wrap === null) return step;
  const half = wrap / 2;
  if (step > -half && step <= half) return step;
  const turned = step - wrap * Math.floor(step / wrap);
  return turned > half ? turned - wrap : turned;
}
