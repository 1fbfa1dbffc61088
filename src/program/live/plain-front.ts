import { createPlainProgress } from '../../core/screen/plain-progress.ts';
import type { FrontOptions, TrialFront } from './TrialFront.ts';

/** The live trial as plain lines, for a pipe or a script. */
export function plainFront(
  { setup, signal }: Pick<FrontOptions, 'setup' | 'signal'>,
  write: (line: string) => void,
): TrialFront {
  const progress = createPlainProgress(setup);
  return {
    show(event) {
      for (const line of progress.lines(event)) write(line);
    },
    drawn: Promise.resolve(),
    left: new Promise((resolve) => {
      if (signal.aborted) resolve('stopped');
      signal.addEventListener('abort', () => resolve('stopped'), { once: true });
    }),
  };
}
