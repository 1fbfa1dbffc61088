import type { RunCheck } from './RunCheck.ts';

/** Above this without a known room temperature a record that begins inside the rise is suspect, °C. Judgement. */
const WARM_WITHOUT_BASELINE_C = 40;

/**
 * Press closed is known only from the onset of the rise: the soak time lacks the heat's way through the part and is short.
 * A note, which the trial uses to keep such runs apart; suspect when the record begins inside the rise well above room temperature,
 * and where the closing had been marked and the mark was taken back.
 */
export const fromOnset: RunCheck = ({ pressClosed, onset, rules, startC, closingTakenBack }) => {
  if (pressClosed?.by !== 'onset') return null;
  const seen = onset?.baselineSeen ?? true;
  const roomC = rules.ambientC === null ? WARM_WITHOUT_BASELINE_C : rules.ambientC + rules.warmCarrierLimitC;
  const inRise = !seen && startC !== null && startC > roomC;
  return {
    code: 'from-onset',
    severity: inRise || closingTakenBack ? 'suspect' : 'note',
    facts: {
      baselineSeen: seen ? 'yes' : 'no',
      ...(closingTakenBack ? { takenBack: 'yes' } : {}),
      ...(startC === null ? {} : { startC }),
    },
  };
};
