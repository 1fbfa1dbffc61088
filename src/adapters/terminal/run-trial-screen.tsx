import type { TrialIntent } from '../../core/screen/TrialIntent.ts';
import { runOnOtherPage } from './run-on-other-page.tsx';
import { TrialScreen } from './TrialScreen.tsx';
import type { TrialScreenModel } from './TrialScreenModel.ts';
import { INTERRUPTED } from './use-keys.ts';

export interface RunTrialScreenOptions {
  readonly model: TrialScreenModel;
  /** Host monotonic clock, µs; the same that stamps the recording. */
  readonly nowUs: () => number;
  /** Every wish of the screen except `bell`, which the screen rings itself. `quit` also ends the screen. */
  readonly onIntent: (intent: TrialIntent) => void;
  /** ASCII although the terminal shows more. @default false */
  readonly ascii?: boolean;
  /** Colour as far as the terminal has it. @default true */
  readonly colour?: boolean;
  /** Time between redraws, ms; at least 100. @default 250: digits change at most four times a second */
  readonly everyMs?: number;
  /** Called once the first picture has been handed to the terminal. */
  readonly onDrawn?: () => void;
  /** Ends the screen from outside (signal, end of a demo). */
  readonly signal?: AbortSignal;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
  readonly stderr?: NodeJS.WriteStream;
}

/** Why the screen ended. A drawing error rejects instead. */
export interface TrialScreenEnd {
  readonly why: 'quit' | 'interrupted' | 'stopped';
  readonly bells: number;
}

/** Without a listener of ours these would end the program before the terminal is restored. */
const END_SIGNALS = ['SIGTERM', 'SIGHUP'] as const;

/**
 * Shows the trial screen on the terminal's other page until it is left; then the terminal is as before.
 * Ends on the screen's own `quit`, on Ctrl-C, SIGTERM, SIGHUP and on `signal`. Needs a terminal: `stdout.isTTY` and `stdin.isTTY`.
 */
export async function runTrialScreen(options: RunTrialScreenOptions): Promise<TrialScreenEnd> {
  const { model, nowUs, onIntent, ascii = false, colour = true, everyMs = 250, signal } = options;
  const { stdin = process.stdin, stdout = process.stdout, stderr = process.stderr } = options;
  let bells = 0;
  let why: TrialScreenEnd['why'] = 'stopped';
  const value = await runOnOtherPage({
    stdin,
    stdout,
    stderr,
    maxFps: 15,
    signal,
    endSignals: END_SIGNALS,
    onDrawn: options.onDrawn,
    ascii,
    colour,
    draw: (clearWindow, drawing) => (
      <TrialScreen
        model={model}
        nowUs={nowUs}
        drawing={drawing}
        everyMs={everyMs}
        clearWindow={clearWindow}
      />
    ),
    listen: ({ stop, write }) =>
      model.onIntent((intent) => {
        if (intent.kind === 'bell') {
          bells++;
          write('\u0007');
          return;
        }
        onIntent(intent);
        if (intent.kind === 'quit') {
          why = 'quit';
          stop();
        }
      }),
  });
  return { why: value === INTERRUPTED ? 'interrupted' : why, bells };
}
