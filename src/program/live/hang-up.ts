/** Whether the terminal's window was closed. */
let closed = false;

export function windowClosed(): void {
  closed = true;
}

/**
 * Ends as a closed window ends a program. Without its terminal, an ordinary exit would try to restore it and stop with
 * a report of a failure. Without a terminal from the start there is nothing to restore.
 */
export function endIfWindowClosed(): void {
  if (!closed || !process.stdin.isTTY) return;
  process.removeAllListeners('SIGHUP');
  process.kill(process.pid, 'SIGHUP');
}
