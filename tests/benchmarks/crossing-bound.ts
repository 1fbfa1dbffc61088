import { type Heating, trueSoak } from '../core/run/make-heating.ts';

/** Cramér–Rao bound of the crossing time for plateau, start and τ free, white noise; 3×3 Fisher matrix by Cramer's rule. */
export function crossingBound(
  heating: Heating,
  targetC: number,
  timesS: readonly number[],
  noiseC: number,
): number {
  const { platenC, startC, timeConstantS: tau, delayS } = heating;
  const f = [0, 0, 0, 0, 0, 0];
  for (const timeS of timesS) {
    const e = Math.exp(-(timeS - delayS) / tau);
    const a = 1 - e;
    const b = e;
    const c = (-(platenC - startC) * e * (timeS - delayS)) / tau ** 2;
    f[0]! += a * a;
    f[1]! += a * b;
    f[2]! += a * c;
    f[3]! += b * b;
    f[4]! += b * c;
    f[5]! += c * c;
  }
  const [aa, ab, ac, bb, bc, cc] = f as [number, number, number, number, number, number];
  const det = aa * (bb * cc - bc * bc) - ab * (ab * cc - bc * ac) + ac * (ab * bc - bb * ac);
  const inv = [
    [(bb * cc - bc * bc) / det, (ac * bc - ab * cc) / det, (ab * bc - ac * bb) / det],
    [(ac * bc - ab * cc) / det, (aa * cc - ac * ac) / det, (ab * ac - aa * bc) / det],
    [(ab * bc - ac * bb) / det, (ab * ac - aa * bc) / det, (aa * bb - ab * ab) / det],
  ];
  const crossS = trueSoak(heating, targetC) - delayS;
  const e = Math.exp(-crossS / tau);
  const slope = ((platenC - startC) * e) / tau;
  const g = [-(1 - e) / slope, -e / slope, ((platenC - startC) * e * crossS) / tau ** 2 / slope];
  let variance = 0;
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += g[i]! * inv[i]![j]! * g[j]!;
  return noiseC * Math.sqrt(variance);
}
