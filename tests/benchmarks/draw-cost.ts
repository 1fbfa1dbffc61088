import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { bundleFixture } from '../adapters/terminal/terminal-program.ts';

export interface DrawCost {
  /** Share of a core at ten readings and ten draws a second of a 100 × 30 window. */
  readonly coreShare: number;
  readonly msPerDraw: number;
  /** Frames that reached the terminal, a second of the bench: a frame without a change is not sent. */
  readonly framesPerS: number;
  /** Hours of drawing at ten a second that were drawn. */
  readonly hoursDrawn: number;
  /** Heap after a collection at a quarter and at the end, MB. */
  readonly heapMb: readonly [number, number];
}

/**
 * What the trial screen costs on a real pseudo-terminal, measured in a process of its own for `seconds`; with `factor`, so
 * many times as fast. `root` is the folder of the project: the drawn program is bundled from its sources.
 */
export async function drawCost(root: string, seconds: number, factor = 1): Promise<DrawCost> {
  const fixture = await bundleFixture('draw-cost', join(root, 'tests', 'adapters', 'terminal', 'fixtures'));
  try {
    const { output, frames } = await outputOf(fixture.path, [`${seconds}`, `${factor}`]);
    const found = /cost (\{.*\})/.exec(output)?.[1];
    if (found === undefined) throw new Error(`draw-cost said nothing: ${output.slice(-300)}`);
    return { ...(JSON.parse(found) as Omit<DrawCost, 'framesPerS'>), framesPerS: frames / seconds };
  } finally {
    fixture.remove();
  }
}

/** Each frame is sent between the marks of a synchronised update. */
const FRAME = '\u001b[?2026h';

function outputOf(
  path: string,
  args: readonly string[],
): Promise<{ readonly output: string; readonly frames: number }> {
  const { CI: _ci, CONTINUOUS_INTEGRATION: _integration, ...rest } = process.env;
  const program = spawn(process.execPath, ['--expose-gc', path, ...args], {
    cols: 100,
    rows: 30,
    cwd: join(path, '..'),
    env: { ...rest, TERM: 'xterm-256color' } as Record<string, string>,
  });
  let output = '';
  let frames = 0;
  program.onData((data) => {
    // Only the end is read: hours of drawing are not kept.
    output = (output + data).slice(-20_000);
    frames += data.split(FRAME).length - 1;
  });
  return new Promise((resolve) => program.onExit(() => resolve({ output, frames })));
}
