import type { TerminalWriter } from './terminal-writer.ts';

/** Draws whole frames on the terminal's other page, row by row. */
export interface FramePainter {
  /** Shows these rows from the top of the window; only rows that differ from what stands there are sent. */
  paint(lines: readonly string[]): void;
  /** The window was cleared or resized: nothing is known of what stands there. */
  forget(): void;
  /** Draws nothing more. */
  stop(): void;
}

/** Least time between two frames and the clock it is told by. */
export interface Pace {
  readonly leastMs: number;
  nowMs(): number;
  /** Runs once after so long. */
  later(run: () => void, afterMs: number): void;
}

/** At most ten frames a second, however many are wanted: keys, resizes and clocks each ask for one. */
const TEN_A_SECOND: Pace = {
  leastMs: 100,
  nowMs: () => performance.now(),
  later: (run, afterMs) => void setTimeout(run, afterMs),
};

const CLEAR = '\u001b[2J';
/** Terminals that know it show everything between the two at once; others ignore it. */
const TOGETHER = '\u001b[?2026h';
const SHOW = '\u001b[?2026l';

/**
 * Draws through a writer that never waits: while the terminal has not taken the last frame, or it stands for less than the
 * pace allows, only the newest one is kept.
 */
export function createFramePainter(writer: TerminalWriter, pace: Pace = TEN_A_SECOND): FramePainter {
  let standing: readonly string[] | null = null;
  let wanted: readonly string[] | null = null;
  let stopped = false;
  let paintedMs = Number.NEGATIVE_INFINITY;
  let waiting = false;

  function send(): void {
    if (wanted === null || stopped || waiting || !writer.idle) return;
    const earlyMs = paintedMs + pace.leastMs - pace.nowMs();
    if (earlyMs > 0) {
      waiting = true;
      pace.later(() => {
        waiting = false;
        send();
      }, Math.ceil(earlyMs));
      return;
    }
    const text = changes(standing, wanted);
    standing = wanted;
    wanted = null;
    if (text === '') return;
    paintedMs = pace.nowMs();
    writer.write(`${TOGETHER}${text}${SHOW}`);
  }

  writer.onIdle(send);
  return {
    paint(lines) {
      wanted = lines;
      send();
    },
    forget() {
      standing = null;
    },
    stop() {
      stopped = true;
    },
  };
}

/** Each row that changed: go to its first column, erase it, write it. Rows are never wider than the window. */
function changes(before: readonly string[] | null, after: readonly string[]): string {
  let text = before === null ? CLEAR : '';
  const rows = Math.max(before?.length ?? 0, after.length);
  for (let row = 0; row < rows; row++) {
    const line = after[row] ?? '';
    if (before === null ? line === '' : line === (before[row] ?? '')) continue;
    text += `\u001b[${row + 1};1H\u001b[2K${line}`;
  }
  return text;
}
