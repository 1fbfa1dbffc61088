/**
 * Round values inside [low, high] at a step of 1, 2 or 5 times a power of ten, at most `most` of them.
 * Unit in = unit out. Refuses nothing: an empty or non-finite range gives no ticks.
 */
export function niceTicks(low: number, high: number, most: number): readonly number[] {
  if (!(Number.isFinite(low) && Number.isFinite(high)) || high <= low || most < 1) return [];
  const power = 10 ** Math.floor(Math.log10((high - low) / most));
  let step = power * 10;
  for (const factor of [1, 2, 5, 10, 20, 50]) {
    const first = Math.ceil(low / (power * factor));
    if (Math.floor(high / (power * factor)) - first + 1 <= most) {
      step = power * factor;
      break;
    }
  }
  const ticks: number[] = [];
  for (let index = Math.ceil(low / step - 1e-9); index * step <= high + step * 1e-9; index++) {
    ticks.push(Number((index * step).toPrecision(12)));
  }
  return ticks;
}
