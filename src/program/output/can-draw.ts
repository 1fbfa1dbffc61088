/**
 * Whether screens can be drawn: standard input and output are a terminal, and one that moves its cursor. `TERM=dumb` says
 * that it does not (terminfo: no `cup`).
 */
export function canDraw(): boolean {
  return process.stdout.isTTY === true && process.stdin.isTTY === true && process.env.TERM !== 'dumb';
}
