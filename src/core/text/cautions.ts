/** Occasions on which the program shows a caution: briefly, where it applies, on screens and in results. */
export type CautionOccasion =
  | 'heat'
  | 'closing'
  | 'fumes'
  | 'cleaning'
  | 'checks'
  | 'probe'
  | 'repair'
  | 'not-a-safety-device';

/** Short texts by occasion, most important sentence first. */
export const CAUTIONS: Readonly<Record<CautionOccasion, readonly string[]>> = {
  heat: ['Platens burn at once and parts stay hot long after: heat gloves, tongs.'],
  closing: [
    'The ram crushes: never hold a probe or a part while it closes.',
    'Lay the probe with long tools and the ram blocked. Never defeat a guard or two-hand control for a wire.',
  ],
  fumes: [
    'Hot adhesive and friction material give off fumes: ventilate first. A respirator only under a fit programme.',
    'Old linings may hold asbestos: no dry grinding, brushing or blowing; follow the law.',
  ],
  cleaning: [
    'Cleaning solvents are highly flammable, and their vapour travels to contactors, sparks and hot platens.',
    'Let them flash off, close the can, put wipes into a closed metal bin. Chemical gloves, eye protection.',
  ],
  checks: [
    'Air jet, blade and chisel checks: eye shield, work clamped, blade away from the body.',
    'Guarded air nozzle; the US cleaning rule asks for below 30 psi (29 CFR 1910.242(b), from memory).',
  ],
  probe: [
    'A grounded thermocouple junction can put a heater fault voltage on the computer.',
    'Use isolated reader inputs or a USB isolator, and have the platen earth checked.',
  ],
  repair: ['Lock out and release the air before a repair or a platen survey.'],
  'not-a-safety-device': [
    'This program advises. It is no safety device and no interlock, and it commands no press.',
    "Follow the machine's manual, the adhesive's data sheet, local codes, and people qualified for the work.",
  ],
};

/** Cautions for several occasions, in the order asked, each sentence once. */
export function cautionLines(...occasions: readonly CautionOccasion[]): readonly string[] {
  return [...new Set(occasions.flatMap((occasion) => CAUTIONS[occasion]))];
}
