const STEPS_S = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 43_200, 86_400];

/** Times at a step people count in (1, 2, 5, 10, 15, 30 s, 1, 2, 5 min …) inside [fromS, toS], at most `most`. */
export function timeTicks(fromS: number, toS: number, most: number): readonly number[] {
  if (!(Number.isFinite(fromS) && Number.isFinite(toS)) || toS <= fromS || most < 1) return [];
  const stepS = STEPS_S.find((step) => (toS - fromS) / step <= most) ?? Math.ceil((toS - fromS) / most);
  const ticks: number[] = [];
  for (let index = Math.ceil(fromS / stepS); index * stepS <= toS; index++) ticks.push(index * stepS);
  return ticks;
}
