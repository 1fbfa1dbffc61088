const WIDTH = 30;
const EVERY_MS = 100;

/** A bar on standard error for long work, on a terminal only; `total` null = how much is not known. */
export function progressBar(what: string, total: number | null): { step(): void; end(): void } {
  const shown = process.stderr.isTTY === true && (total === null || total > 20);
  let done = 0;
  let drawnMs = 0;
  return {
    step() {
      done += 1;
      const nowMs = performance.now();
      if (!shown || nowMs - drawnMs < EVERY_MS) return;
      drawnMs = nowMs;
      const full = total === null ? 0 : Math.round((done / total) * WIDTH);
      const bar = total === null ? '' : `[${'='.repeat(full)}${' '.repeat(WIDTH - full)}] `;
      process.stderr.write(`\r${bar}${done}${total === null ? '' : ` of ${total}`} ${what}`);
    },
    end() {
      if (shown && done > 0) process.stderr.write('\r\u001b[K');
    },
  };
}
