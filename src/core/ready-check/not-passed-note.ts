/** A note that begins so states what the ready check found out of order as the press closed; with "probe fault", at a probe. */
const NOT_PASSED = /^Ready check not passed(, probe fault)?: /u;

/** The note that goes into the recording as a press closes over lines of the ready check that are not in order. */
export function notPassedNote(found: readonly string[], atProbe: boolean): string {
  return `Ready check not passed${atProbe ? ', probe fault' : ''}: ${found.join(' ')}`;
}

/** What such a note says; null for any other note. */
export function parseNotPassed(note: string): { readonly found: string; readonly atProbe: boolean } | null {
  const head = NOT_PASSED.exec(note);
  return head === null ? null : { found: note.slice(head[0].length), atProbe: head[1] !== undefined };
}
