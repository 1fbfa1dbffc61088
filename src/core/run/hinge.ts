import type { Samples } from './collect-samples.ts';
import { solveThree } from './solve-three.ts';

/** A level up to a time, a rise s·x + c·x² from there on. */
export interface Hinge {
  readonly atS: number;
  readonly levelC: number;
  readonly slopeCPerS: number;
  /** °C/s²; negative where the rise slows down. */
  readonly bend: number;
  /** Weighted sum of squares of what it leaves over, °C². */
  readonly cost: number;
}

export function hingeLevelC({ atS, levelC, slopeCPerS, bend }: Hinge, timeS: number): number {
  const x = timeS > atS ? timeS - atS : 0;
  return levelC + x * (slopeCPerS + bend * x);
}

/** Sums over the readings from one on: Σw·uᵃ (a ≤ 4) and Σw·y·uᵃ (a ≤ 2), u = seconds before the last reading. */
const SUMS = 8;

/**
 * Least-squares hinges for any kink time at a constant cost each: the sums over the readings after the kink are taken from
 * running sums about the last reading, shifted to the kink. The rise may not turn down inside the samples: there it is held
 * at its limit, level at their end. Null where nothing rises. Without weights every reading counts once.
 */
export function hingeSearch(
  { timesS, valuesC }: Samples,
  weights: Float64Array | null,
): (atS: number) => Hinge | null {
  const count = timesS.length;
  const lastS = timesS[count - 1]!;
  const baseC = valuesC[0]!;
  const sums = new Float64Array((count + 1) * SUMS);
  let squares = 0;
  for (let i = count - 1; i >= 0; i--) {
    const w = weights === null ? 1 : weights[i]!;
    const u = timesS[i]! - lastS;
    const y = valuesC[i]! - baseC;
    const wu = w * u;
    const wuu = wu * u;
    const from = (i + 1) * SUMS;
    const to = i * SUMS;
    sums[to] = sums[from]! + w;
    sums[to + 1] = sums[from + 1]! + wu;
    sums[to + 2] = sums[from + 2]! + wuu;
    sums[to + 3] = sums[from + 3]! + wuu * u;
    sums[to + 4] = sums[from + 4]! + wuu * u * u;
    sums[to + 5] = sums[from + 5]! + w * y;
    sums[to + 6] = sums[from + 6]! + wu * y;
    sums[to + 7] = sums[from + 7]! + wuu * y;
    squares += w * y * y;
  }
  return (atS) => {
    const d = atS - lastS;
    const at = firstAfter(timesS, atS) * SUMS;
    const [w0, w1, w2] = [sums[at]!, sums[at + 1]!, sums[at + 2]!];
    const [w3, w4] = [sums[at + 3]!, sums[at + 4]!];
    const [v0, v1, v2] = [sums[at + 5]!, sums[at + 6]!, sums[at + 7]!];
    const s0 = sums[0]!;
    const y0 = sums[5]!;
    const s1 = w1 - d * w0;
    const s2 = w2 - d * (2 * w1 - d * w0);
    const s3 = w3 - d * (3 * w2 - d * (3 * w1 - d * w0));
    const s4 = w4 - d * (4 * w3 - d * (6 * w2 - d * (4 * w1 - d * w0)));
    const y1 = v1 - d * v0;
    const y2 = v2 - d * (2 * v1 - d * v0);
    const free = solveThree({ aa: s0, ab: s1, ac: s2, bb: s2, bc: s3, cc: s4 }, [y0, y1, y2]);
    let [level, s, c] = free ?? [0, -1, 0];
    if (s < 0 || s - 2 * c * d < 0) {
      // Held at its limit: level at the samples' end, c = −s/(2·span); one basis x − x²/(2·span), span = −d.
      const k = d < 0 ? -1 / (2 * d) : 0;
      const b1 = s1 - k * s2;
      const b2 = s2 - 2 * k * s3 + k * k * s4;
      const determinant = s0 * b2 - b1 * b1;
      if (!(determinant > 1e-12 * s0 * b2)) return null;
      const right = y1 - k * y2;
      level = (b2 * y0 - b1 * right) / determinant;
      s = (s0 * right - b1 * y0) / determinant;
      c = -k * s;
    }
    if (!(s >= 0)) return null;
    // Sum of squares at the least-squares solution: Σwy² − bᵀ·x.
    const cost = Math.max(0, squares - level * y0 - s * y1 - c * y2);
    return { atS, levelC: baseC + level, slopeCPerS: s, bend: c, cost };
  };
}

function firstAfter(timesS: Float64Array, timeS: number): number {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (timesS[middle]! <= timeS) low = middle + 1;
    else high = middle;
  }
  return low;
}
