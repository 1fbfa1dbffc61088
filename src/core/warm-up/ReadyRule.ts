/** When platens count as ready: every one inside its band for so long. Common practice, no source; changeable. */
export interface ReadyRule {
  /** Half-width of the band about the set point, °C of difference. */
  readonly bandC: number;
  /** Without a break, s. */
  readonly forS: number;
}

/** ±5 °F for 5 min (common practice, no source). */
export const DEFAULT_READY_RULE: ReadyRule = Object.freeze({ bandC: 5 / 1.8, forS: 300 });
