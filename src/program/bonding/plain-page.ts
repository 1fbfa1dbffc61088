import { createInterface } from 'node:readline';
import type { PageEvent } from '../../adapters/terminal/page/PageModel.ts';

const EVERY_MS = 100;

/**
 * A live page without a terminal: time goes on, and lines of standard input that hold one key (c, o, u, q) count as that
 * key. Resolves when `signal` ends it.
 */
export function plainPage(
  model: { dispatch(event: PageEvent): void },
  nowUs: () => number,
  signal: AbortSignal,
): Promise<void> {
  return new Promise((resolve) => {
    const lines = createInterface({ input: process.stdin });
    lines.on('line', (line) => {
      const name = line.trim().toLowerCase();
      if (name.length !== 1) return;
      const atUs = nowUs();
      model.dispatch({ kind: 'input', input: { kind: 'character', character: name, atUs }, atUs });
    });
    const timer = setInterval(() => model.dispatch({ kind: 'tick', atUs: nowUs() }), EVERY_MS);
    const end = (): void => {
      clearInterval(timer);
      lines.close();
      process.stdin.unref?.();
      resolve();
    };
    if (signal.aborted) end();
    else signal.addEventListener('abort', end, { once: true });
  });
}
