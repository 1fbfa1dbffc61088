import type { ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** The reader speaks: lines come in that can be used. */
export function checkReader({ reader }: ReadyFacts): ReadyFinding {
  switch (reader.kind) {
    case 'speaks':
      return {
        state: 'ready',
        code: 'reader-speaks',
        facts: reader.ratePerS === null ? {} : { ratePerS: reader.ratePerS },
      };
    case 'silent':
      return {
        state: 'not-ready',
        code: 'reader-silent',
        facts: reader.ageS === null ? {} : { ageS: reader.ageS },
      };
    case 'lost':
      return { state: 'not-ready', code: 'reader-lost', facts: { cause: reader.cause } };
    case 'refused':
      return { state: 'not-ready', code: 'reader-refused', facts: { detail: reader.detail } };
  }
}
