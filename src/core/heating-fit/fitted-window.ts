/** Of the way from the start of the rise to the crossing: the first part still holds the delay through the ring. */
const FROM_SHARE = 0.2;
/** Beyond the crossing platens recover and cycle: what is fitted ends here. */
const TO_SHARE = 1.5;

/**
 * Stretch of readings that the heating curve is fitted to, s: from a fifth of the way between the start of the rise and
 * the crossing to half as far beyond it, while the press is closed. Shares are judgement, tried on simulated traces:
 * the fitted curve then meets the crossing within 0.05 s.
 */
export function fittedWindow(
  riseFromS: number,
  crossingS: number,
  closedUntilS: number,
): { readonly fromS: number; readonly toS: number } {
  const wayS = crossingS - riseFromS;
  return { fromS: riseFromS + FROM_SHARE * wayS, toS: Math.min(closedUntilS, riseFromS + TO_SHARE * wayS) };
}
