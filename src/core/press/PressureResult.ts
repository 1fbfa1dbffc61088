export interface PressureInput {
  readonly ringOuterDiameterMm: number;
  readonly ringInnerDiameterMm: number;
  /** Share of the ring's area that carries load; 1 for a plain ring. */
  readonly landFraction?: number;
  readonly ramBoreMm: number;
  readonly ramRodMm?: number | null;
  /** True when the rams close the press by pulling: the rod takes area away. */
  readonly ramPulls?: boolean;
  readonly rams?: number;
  /** Share of the ram's force that reaches the ring; 1 unless friction is known. */
  readonly efficiency?: number;
  /** Exactly one of the two is given; the other is worked out. */
  readonly given: { readonly gaugePsi: number } | { readonly netFacingPsi: number };
  readonly bandPsi?: { readonly low: number; readonly high: number };
  readonly gaugeDivisionPsi?: number | null;
}

export interface PressureResult {
  readonly ringAreaMm2: number;
  readonly ramAreaMm2: number;
  readonly gaugePsi: number;
  readonly netFacingPsi: number;
  readonly insideBand: boolean;
  readonly side: 'below' | 'inside' | 'above';
  readonly bandLowPsi: number;
  readonly bandHighPsi: number;
  /** Gauge readings that give the two ends of the band. */
  readonly bandLowGaugePsi: number;
  readonly bandHighGaugePsi: number;
  readonly gaugeDivisionPsi: number | null;
  /** What one gauge division read wrong moves the net facing pressure by; null without a division. */
  readonly netFacingPerDivisionPsi: number | null;
  /** Net facing pressure with the gauge one division low and one high. */
  readonly netFacingLowPsi: number | null;
  readonly netFacingHighPsi: number | null;
  /** True when one division read wrong may leave the band; null without a division. */
  readonly divisionMayLeaveBand: boolean | null;
  /** Force of all rams on the ring, N. */
  readonly forceN: number;
}
