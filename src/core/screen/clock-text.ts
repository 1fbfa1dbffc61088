/** Seconds as "41 s", from two minutes on "2 min 05 s". */
export function clockText(seconds: number): string {
  const whole = Math.floor(Math.max(0, seconds));
  return whole < 120
    ? `${whole} s`
    : `${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`;
}
