import type { Projection } from './rise-projection.ts';

const GRID_STEPS = 20;
const LARGEST_STEPS = 80;

export type Project = (rate: number) => Projection | null;

/**
 * Rate at which the squares are least: bracketed by a walk from a start or over a grid, then the zero of their slope by
 * Illinois false position. Null where nothing brackets a minimum.
 */
export function leastSquaresRate(x: Float64Array, project: Project, startRate: number | null): number | null {
  const bracket = startRate === null ? gridBracket(x, project) : walkBracket(startRate, project);
  return bracket === null ? null : zeroOfSlope(bracket, project);
}

function gridBracket(x: Float64Array, project: Project): [number, number] | null {
  const span = x[x.length - 1]! - x[0]!;
  const low = Math.log(1 / (20 * span));
  const high = Math.log(20 * (x.length / span));
  const cost = (step: number) =>
    project(Math.exp(low + ((high - low) * step) / GRID_STEPS))?.squares ?? Number.POSITIVE_INFINITY;
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let step = 0; step <= GRID_STEPS; step += 1) {
    const squares = cost(step);
    if (squares < least) {
      least = squares;
      best = step;
    }
  }
  if (best <= 0 || best === GRID_STEPS) return null;
  const at = (step: number) => Math.exp(low + ((high - low) * step) / GRID_STEPS);
  return [at(best - 1), at(best + 1)];
}

/** From a start downhill by factors until the slope turns. */
function walkBracket(startRate: number, project: Project): [number, number] | null {
  const first = project(startRate);
  if (first === null || first.slope === 0) return null;
  const factor = first.slope > 0 ? 1 / 1.3 : 1.3;
  let before = startRate;
  for (let step = 0; step < LARGEST_STEPS; step += 1) {
    const next = before * factor;
    const there = project(next);
    if (there === null) return null;
    if (Math.sign(there.slope) !== Math.sign(first.slope))
      return factor > 1 ? [before, next] : [next, before];
    before = next;
  }
  return null;
}

/** Illinois false position, in the logarithm of the rate. */
function zeroOfSlope([lowRate, highRate]: [number, number], project: Project): number {
  let [a, b] = [Math.log(lowRate), Math.log(highRate)];
  let fa = project(lowRate)?.slope ?? 0;
  let fb = project(highRate)?.slope ?? 0;
  if (fa * fb > 0) return goldenSection(a, b, project);
  let side = 0;
  for (let round = 0; round < 100; round += 1) {
    const c = (fa * b - fb * a) / (fa - fb);
    const fc = project(Math.exp(c))?.slope ?? 0;
    if (fc === 0 || Math.abs(b - a) < 1e-14 * Math.max(1, Math.abs(c))) return Math.exp(c);
    if (fc * fb > 0) {
      const moved = Math.abs(c - b);
      [b, fb] = [c, fc];
      if (side === -1) fa /= 2;
      side = -1;
      if (moved < 1e-13) return Math.exp(c);
    } else {
      const moved = Math.abs(c - a);
      [a, fa] = [c, fc];
      if (side === 1) fb /= 2;
      side = 1;
      if (moved < 1e-13) return Math.exp(c);
    }
  }
  return Math.exp((a + b) / 2);
}

/** Where the slope keeps its sign between two grid steps (two dips in one): least squares by golden section. */
function goldenSection(a: number, b: number, project: Project): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  const cost = (at: number) => project(Math.exp(at))?.squares ?? Number.POSITIVE_INFINITY;
  for (let round = 0; round < 60; round += 1) {
    const [c, d] = [b - ratio * (b - a), a + ratio * (b - a)];
    if (cost(c) < cost(d)) b = d;
    else a = c;
  }
  return Math.exp((a + b) / 2);
}
