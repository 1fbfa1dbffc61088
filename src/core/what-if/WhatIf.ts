/** What the user would change; absent = as in the runs. Temperatures °C. */
export interface WhatIfWish {
  readonly targetC?: number;
  /** Mean of the platens at closing. */
  readonly platenC?: number;
  readonly startC?: number;
}

export type WhatIfRefusal =
  /** No run has a fitted curve. */
  | { readonly code: 'no-fit' }
  /** Other platens are asked for, but neither measured platens nor set points say what they were. */
  | { readonly code: 'platens-unknown' }
  | { readonly code: 'target-not-reached'; readonly targetC: number; readonly plateauC: number }
  | { readonly code: 'target-below-start'; readonly targetC: number; readonly startC: number }
  /** So close to the plateau that what the probe leaves open exceeds a tenth of the hold. */
  | {
      readonly code: 'target-too-close';
      readonly probePartS: number;
      readonly limitS: number;
      readonly slopeCPerS: number;
    };

export type WhatIfCaution =
  /** Target above the highest temperature that the runs reached. */
  | { readonly code: 'above-seen'; readonly seenC: number }
  | { readonly code: 'wrong-model'; readonly runs: number }
  /** The runs measured no platen: the plateau is moved by the change of the set point. */
  | { readonly code: 'platens-not-measured' }
  | { readonly code: 'far'; readonly startDifferenceC: number; readonly platenDifferenceC: number }
  | { readonly code: 'one-run' };

/** An estimate from fitted curves. Never a proof: no recipe is made of it. */
export interface WhatIfEstimate {
  readonly soakS: number;
  /** Holds the next run's soak time with 95 % as far as the curves hold. */
  readonly intervalS: readonly [number, number];
  /** Standard uncertainties, s: of the fits, from run to run, of the probe. */
  readonly parts: {
    readonly fitS: number;
    readonly runToRunS: number;
    readonly modelS: number;
    readonly probeS: number;
  };
  /** What the same curves say for the conditions as they were, and what was measured. */
  readonly asRunFittedS: number;
  readonly asRunMeasuredS: number;
  readonly changeS: number;
  readonly slopeCPerS: number;
  readonly targetC: number;
  readonly plateauC: number;
  readonly startC: number;
  readonly runs: number;
  readonly cautions: readonly WhatIfCaution[];
}

export type WhatIf =
  | { readonly kind: 'estimate'; readonly estimate: WhatIfEstimate }
  | { readonly kind: 'refused'; readonly refusal: WhatIfRefusal };
