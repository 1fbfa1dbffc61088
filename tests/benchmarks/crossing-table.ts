import { CROSSING_CASES, type CrossingCase } from './crossing-cases.ts';
import { conducted, cycling, lagged, recovering, type TrueCurve } from './crossing-curves.ts';
import { crossingMonteCarlo, type Spread } from './crossing-monte-carlo.ts';
import { ONSET_CASES, onsetMonteCarlo } from './crossing-onset.ts';

const ms = (seconds: number): string => (seconds * 1000).toFixed(1);
const pad = (text: string, width: number): string => text.padStart(width);
const share = (coverage: number): string =>
  Number.isNaN(coverage) ? '' : `${(100 * coverage).toFixed(1)} %`;

function row(name: string, spread: Spread, boundS: number | null): string {
  const ratio = boundS === null ? '' : `${(spread.sdS / boundS).toFixed(2)} × bound ${ms(boundS)}`;
  return `  ${name.padEnd(50)}${pad(ms(spread.sdS), 8)}${pad(ms(spread.biasS), 9)}   ${ratio.padEnd(22)}${share(spread.coverage)}`;
}

/** What the estimate has to keep; empty where it does. */
function misses(one: CrossingCase, spread: Spread, boundS: number): string {
  const found: string[] = [];
  const plain = one.correlation === undefined && one.ripple === undefined && one.heating === undefined;
  const small = one.noiseC < one.stepC / 4;
  if (plain && !small && spread.sdS > 1.25 * boundS) found.push('SD over 1.25 × bound');
  if (Math.abs(spread.biasS) > Math.max(spread.sdS / 10, 0.005)) found.push('bias');
  if (spread.coverage < 0.93 || (!small && spread.coverage > 0.97)) found.push('coverage');
  return found.length === 0 ? '' : `  ← misses: ${found.join(', ')}`;
}

/** Prints the crossing's table: estimate against bound and truth, and what a user would otherwise do. Nothing is asserted. */
export function printCrossingTable(runs: number, say: (text: string) => void): void {
  const startMs = performance.now();
  say(
    `Crossing, ${runs.toLocaleString('en')} seeded runs a case, random sampling phase (24 → 232.2 °C, τ 40.5 s, target 176.67 °C, q 0.25 °C)`,
  );
  say(
    `  ${''.padEnd(50)}${pad('SD ms', 8)}${pad('bias ms', 9)}   ${'against the bound'.padEnd(22)}95 % intervals that hold`,
  );
  for (const one of CROSSING_CASES) {
    const withRivals = one.rateHz >= 1 && one.rateHz <= 10 && one.heating === undefined;
    const score = crossingMonteCarlo(one, runs, 11, { withRivals });
    say(row(one.name, score, score.boundS) + misses(one, score, score.boundS));
    if (score.failures > 0) say(`    no crossing found in ${score.failures} runs`);
    for (const [name, spread] of Object.entries(score.rivals ?? {})) say(row(`    ${name}`, spread, null));
  }
  printOnset(runs, say);
  printWholeRise(runs, say);
  say(`  ${((performance.now() - startMs) / 1000).toFixed(0)} s used`);
}

function printOnset(runs: number, say: (text: string) => void): void {
  say('Onset of the rise (15 s of baseline)');
  for (const one of ONSET_CASES) {
    const score = onsetMonteCarlo(one, runs, 12);
    say(row(one.name, score, score.boundS));
  }
}

const WHOLE_RISE: readonly (readonly [string, ((uniform: () => number) => TrueCurve) | null])[] = [
  ['first order, as fitted', null],
  ['probe lag 2 s', once(() => lagged(2))],
  ['probe lag 4 s', once(() => lagged(4))],
  ['probe lag 8 s', once(() => lagged(8))],
  ['platens 10 °C low, recovering with 15 s', once(() => recovering())],
  ['platens ± 1.5 °C every 60 s', (uniform) => cycling(uniform)],
  ['conduction through carrier and ring', once(conducted)],
];

function once(make: () => TrueCurve): () => TrueCurve {
  let kept: TrueCurve | null = null;
  return () => {
    kept ??= make();
    return kept;
  };
}

function printWholeRise(runs: number, say: (text: string) => void): void {
  say(
    'Whole-rise fit as a cross-check, 10 Hz, σ 0.25 °C: it may be the answer only where ≥ 93 % hold in every line',
  );
  let everywhere = true;
  for (const [name, shape] of WHOLE_RISE) {
    const one = { name, rateHz: 10, noiseC: 0.25, stepC: 0.25, ...(shape === null ? {} : { shape }) };
    const score = crossingMonteCarlo(one, runs, 13, { withWholeRise: true });
    const whole = score.wholeRise!;
    everywhere &&= whole.coverage >= 0.93;
    say(row(`${name}: near the crossing`, score, null) + misses(one, score, Number.POSITIVE_INFINITY));
    say(row('    whole rise', whole, null));
  }
  say(
    everywhere
      ? '  it holds everywhere'
      : '  it does not: the figure near the crossing is the answer, the whole rise only a cross-check',
  );
}
