import { parseNotPassed } from '../../ready-check/not-passed-note.ts';
import type { RunCheck } from './RunCheck.ts';

/**
 * The press closed over a line of the ready check that was not in order, and nobody had gone over it for a reason.
 * Suspect where a probe was at fault then; else a note. Judgement.
 */
export const readyCheckNotPassed: RunCheck = ({ notes }) => {
  const found = notes.flatMap((note) => parseNotPassed(note) ?? []);
  if (found.length === 0) return null;
  return {
    code: 'ready-check-not-passed',
    severity: found.some(({ atProbe }) => atProbe) ? 'suspect' : 'note',
    facts: { found: found.map((one) => one.found).join(' ') },
  };
};
