/** Random numbers that depend on the seed alone. */
export interface RandomSource {
  /** Evenly spread in [0, 1). */
  uniform(): number;
  /** Standard normal: mean 0, standard deviation 1. */
  normal(): number;
}

/**
 * xoshiro128** (Blackman and Vigna, public domain reference code), its state filled from the seed by splitmix32.
 * Repeatable on every machine: whole 32-bit arithmetic only. Not for secrets.
 */
export function createRandom(seed: number): RandomSource {
  return createRandomFromState(splitmixState(seed));
}

/** The same generator from a given state of four 32-bit words; `next` gives its raw 32-bit output. */
export function createRandomFromState(state: readonly [number, number, number, number]): RandomSource & {
  next(): number;
} {
  let [a, b, c, d] = state;

  function next(): number {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  }

  // 53 bits, so that a logarithm of it has no visible steps.
  const uniform = (): number => ((next() >>> 5) * 67_108_864 + (next() >>> 6)) / 9_007_199_254_740_992;

  let spare: number | null = null;
  function normal(): number {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    // Box–Muller; 1 − u is never zero.
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  }

  return { next, uniform, normal };
}

function splitmixState(seed: number): [number, number, number, number] {
  let state = seed >>> 0;
  const word = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x85ebca6b);
    mixed ^= mixed >>> 13;
    mixed = Math.imul(mixed, 0xc2b2ae35);
    return (mixed ^ (mixed >>> 16)) >>> 0;
  };
  return [word(), word(), word(), word()];
}

function rotateLeft(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}
