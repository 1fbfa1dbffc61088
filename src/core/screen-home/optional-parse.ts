import { DwellwrightError } from '../DwellwrightError.ts';
import { GUIDE_TEXT } from '../text/home-text.ts';

/** Why `parse` refuses the text, in its own words with what to do; null when it takes it. */
export function problemOf(parse: () => unknown): string | null {
  try {
    parse();
    return null;
  } catch (error) {
    if (!(error instanceof DwellwrightError)) throw error;
    return error.remedy === null ? error.message : `${error.message}. ${error.remedy}`;
  }
}

/** An answer that may stay open: null for an empty text. */
export function optional<Value>(text: string | undefined, parse: (text: string) => Value): Value | null {
  return text === undefined || text.trim() === '' ? null : parse(text);
}

/** Names are 1 to 40 characters. */
export function nameProblem(text: string): string | null {
  if (text === '') return GUIDE_TEXT.needed;
  return text.length > 40 ? GUIDE_TEXT.tooLong : null;
}
