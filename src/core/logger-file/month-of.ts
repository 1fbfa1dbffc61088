/** How the names of months begin, January first: English, German, French, Spanish, Italian, Dutch, Portuguese. */
const MONTHS = [
  /^(?:jan|jän|ene|gen)/,
  /^(?:feb|fév|fev)/,
  /^(?:mar|mär|mrz|maa|mrt)/,
  /^(?:apr|avr|abr)/,
  /^(?:may|mai|mei|mag)/,
  /^(?:jun|juin|giu)/,
  /^(?:jul|juil|lug)/,
  /^(?:aug|aoû|aou|ago)/,
  /^(?:sep|set)/,
  /^(?:oct|okt|ott|out)/,
  /^nov/,
  /^(?:dec|dez|déc|dic)/,
];

/** Number of a month, 1 to 12, by its name or how that begins; 0 for anything else. */
export const monthOf = (name: string): number =>
  MONTHS.findIndex((begins) => begins.test(name.normalize('NFC').toLowerCase())) + 1;
