import { platenMeanC } from '../conditions/platen-mean-c.ts';
import { fittedSlopeCPerS, fittedSoakS } from '../heating-fit/fitted-soak-s.ts';
import type { RunFit } from '../heating-fit/run-fit.ts';
import type { RunResult } from '../run/RunResult.ts';
import { sampleMean } from '../statistics/sample-mean.ts';
import { sampleSd } from '../statistics/sample-sd.ts';
import { studentTQuantile } from '../statistics/student-t-quantile.ts';
import { soakVariance } from './soak-variance.ts';
import type { WhatIf, WhatIfCaution, WhatIfEstimate, WhatIfRefusal, WhatIfWish } from './WhatIf.ts';

export interface WhatIfInput {
  /** Runs that count. */
  readonly runs: readonly RunResult[];
  readonly targetC: number;
  readonly holdS: number;
  /** Half-width that holds the probe's error with 95 %, °C: 0.95·a for a limit ±a, else 1.96·u. */
  readonly probeExpandedC: number;
  /** Mean set point of the platens in the runs; null where not known. */
  readonly setPointC: number | null;
  readonly wish: WhatIfWish;
}

/** The probe's part may be this share of the hold. */
const PROBE_SHARE_OF_HOLD = 0.1;
/** Of the change in soak time, what the first-order curve may be off (limit ±); twice that where it fits badly. Judgement. */
const MODEL_SHARE = 0.1;
/** Changes beyond these lean far on the curve, °C. Judgement. */
const FAR_START_C = 25;
const FAR_PLATEN_C = 15;

interface Changed {
  readonly run: RunResult;
  readonly fit: RunFit;
  readonly soakTimeS: number;
  readonly change: { readonly targetC: number; readonly plateauC: number; readonly startC: number };
}

/**
 * Soak time for another target, other platens or another start, from the runs' fitted curves:
 * delay + τ·ln((Tp − T0)/(Tp − target)), the plateau moved by the change of the platens' mean. Measured soak time of
 * each run plus the change that its curve gives; interval for the next run (95 %) from run-to-run spread, fits, the
 * curve's own misfit and a tenth of the change, and the probe at the new slope. An estimate: never a recipe.
 */
export function whatIf(input: WhatIfInput): WhatIf {
  const { runs, wish } = input;
  const targetC = wish.targetC ?? input.targetC;
  const changed: Changed[] = [];
  for (const run of runs) {
    const { fit, soakTimeS } = run;
    if (fit == null || soakTimeS === null) continue;
    const byPlatenC = platenChangeC(run, input);
    if (byPlatenC === null) return refused({ code: 'platens-unknown' });
    const change = { targetC, plateauC: fit.plateauC + byPlatenC, startC: wish.startC ?? fit.startC };
    changed.push({ run, fit, soakTimeS, change });
  }
  if (changed.length === 0) return refused({ code: 'no-fit' });
  const plateauC = sampleMean(changed.map((one) => one.change.plateauC));
  const startC = sampleMean(changed.map((one) => one.change.startC));
  if (!(targetC > startC)) return refused({ code: 'target-below-start', targetC, startC });
  const soaks = changed.map((one) => fittedSoakS(one.fit, one.change));
  if (soaks.some((soak) => soak === null)) return refused({ code: 'target-not-reached', targetC, plateauC });
  const slopeCPerS = sampleMean(changed.map((one) => fittedSlopeCPerS(one.fit, one.change)));
  const probePartS = input.probeExpandedC / slopeCPerS;
  const limitS = PROBE_SHARE_OF_HOLD * input.holdS;
  if (probePartS > limitS) return refused({ code: 'target-too-close', probePartS, limitS, slopeCPerS });
  return {
    kind: 'estimate',
    estimate: estimate(input, changed, soaks as number[], {
      targetC,
      plateauC,
      startC,
      slopeCPerS,
      probePartS,
    }),
  };
}

function refused(refusal: WhatIfRefusal): WhatIf {
  return { kind: 'refused', refusal };
}

/** Change of the platens' mean against this run, °C; null where it cannot be known. */
function platenChangeC(run: RunResult, { wish, setPointC }: WhatIfInput): number | null {
  if (wish.platenC === undefined) return 0;
  const was = platenMeanC(run) ?? setPointC;
  return was === null ? null : wish.platenC - was;
}

function estimate(
  input: WhatIfInput,
  changed: readonly Changed[],
  fitted: readonly number[],
  at: {
    readonly targetC: number;
    readonly plateauC: number;
    readonly startC: number;
    readonly slopeCPerS: number;
    readonly probePartS: number;
  },
): WhatIfEstimate {
  const n = changed.length;
  const before = changed.map(({ fit }) => fittedSoakS(fit, { targetC: input.targetC }) ?? Number.NaN);
  const known = before.every(Number.isFinite);
  // The curve gives the change; the level is the measured one, so that its misfit at the old target cancels.
  const soaks = changed.map(({ soakTimeS }, i) => (known ? soakTimeS + fitted[i]! - before[i]! : fitted[i]!));
  const soakS = sampleMean(soaks);
  const measuredS = sampleMean(changed.map((one) => one.soakTimeS));
  const beforeS = known ? sampleMean(before) : measuredS;
  const changeS = soakS - measuredS;
  const wrong = changed.filter(({ fit }) => fit.verdict === 'wrong-model').length;
  const fitS = Math.sqrt(sampleMean(changed.map(({ fit, change }) => soakVariance(fit, change))));
  const shareS = (MODEL_SHARE * (wrong > 0 ? 2 : 1) * Math.abs(changeS)) / Math.sqrt(3);
  const modelS = Math.hypot(shareS, beforeS - measuredS);
  const runToRunS = n < 2 ? 0 : sampleSd(soaks);
  const spread = n < 2 ? 0 : studentTQuantile(0.975, n - 1) * runToRunS * Math.sqrt(1 + 1 / n);
  const halfS = Math.hypot(spread, 1.96 * fitS, 1.96 * modelS, at.probePartS);
  return {
    soakS,
    intervalS: [Math.max(0, soakS - halfS), soakS + halfS],
    parts: { fitS, runToRunS, modelS, probeS: at.probePartS / 1.96 },
    asRunFittedS: beforeS,
    asRunMeasuredS: measuredS,
    changeS,
    slopeCPerS: at.slopeCPerS,
    targetC: at.targetC,
    plateauC: at.plateauC,
    startC: at.startC,
    runs: n,
    cautions: cautions(input, changed, wrong),
  };
}

function cautions(
  { wish, targetC, setPointC }: WhatIfInput,
  changed: readonly Changed[],
  wrong: number,
): readonly WhatIfCaution[] {
  const all: WhatIfCaution[] = [];
  if (changed.length === 1) all.push({ code: 'one-run' });
  if (wrong > 0) all.push({ code: 'wrong-model', runs: wrong });
  const seenC = Math.max(...changed.map(({ run }) => run.peakC ?? targetC));
  if ((wish.targetC ?? targetC) > seenC) all.push({ code: 'above-seen', seenC });
  const first = changed[0]!;
  const unmeasured = changed.some(({ run }) => platenMeanC(run) === null);
  if (wish.platenC !== undefined && unmeasured) all.push({ code: 'platens-not-measured' });
  const startDifferenceC = first.change.startC - first.fit.startC;
  const platenDifferenceC =
    wish.platenC === undefined ? 0 : wish.platenC - (platenMeanC(first.run) ?? setPointC ?? wish.platenC);
  if (Math.abs(startDifferenceC) > FAR_START_C || Math.abs(platenDifferenceC) > FAR_PLATEN_C)
    all.push({ code: 'far', startDifferenceC, platenDifferenceC });
  return all;
}
