import { render } from 'ink';
import type { TrialIntent } from '../../core/screen/TrialIntent.ts';
import { FramePainterContext } from './FrameRows.tsx';
import { createFramePainter } from './frame-painter.ts';
import { keepScrollback } from './keep-scrollback.ts';
import { ScreenErrorBoundary } from './ScreenErrorBoundary.tsx';
import { silentStdout } from './silent-stdout.ts';
import { INTERRUPTED, TrialScreen } from './TrialScreen.tsx';
import type { TrialScreenModel } from './TrialScreenModel.ts';
import { createTerminalWriter } from './terminal-writer.ts';

export interface RunTrialScreenOptions {
  readonly model: TrialScreenModel;
  /** Host monotonic clock, µs; the same that stamps the recording. */
  readonly nowUs: () => number;
  /** Every wish of the screen except `bell`, which the screen rings itself. `quit` also ends the screen. */
  readonly onIntent: (intent: TrialIntent) => void;
  /** @default false */
  readonly ascii?: boolean;
  /** @default true */
  readonly colour?: boolean;
  /** Time between redraws, ms; at least 100. @default 200 */
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

const OTHER_SCREEN = '\u001b[?1049h\u001b[2J\u001b[H\u001b[?25l';
const BACK = '\u001b[?25h\u001b[?1049l';
/** A terminal that stands still for longer keeps its state: the program goes on to its end. */
const LONGEST_WAIT_MS = 1000;
/** Without a listener of ours these would end the program before the terminal is restored. */
const END_SIGNALS = ['SIGTERM', 'SIGHUP'] as const;

/**
 * Shows the trial screen on the terminal's other page until it is left; then the terminal is as before.
 * Ends on the screen's own `quit`, on Ctrl-C, SIGTERM, SIGHUP and on `signal`. Needs a terminal: `stdout.isTTY` and `stdin.isTTY`.
 */
export async function runTrialScreen(options: RunTrialScreenOptions): Promise<TrialScreenEnd> {
  const { model, nowUs, onIntent, ascii = false, colour = true, everyMs = 200, signal } = options;
  const { stdin = process.stdin, stdout = process.stdout, stderr = process.stderr } = options;
  let bells = 0;
  let why: TrialScreenEnd['why'] = 'stopped';
  // A screen reader gets ink's own lines instead of a drawing.
  const spoken = process.env.INK_SCREEN_READER === 'true';
  const writer = createTerminalWriter(stdout);
  const painter = spoken ? null : createFramePainter(writer);
  const restore = () => {
    if (writer.idle) stdout.write(BACK);
  };
  writer.write(OTHER_SCREEN);
  process.once('exit', restore);
  let fail: (error: Error) => void = () => {};
  const failed = new Promise<never>((_resolve, reject) => {
    fail = reject;
  });
  const app = render(
    <ScreenErrorBoundary onError={(error) => fail(error)}>
      <FramePainterContext value={painter}>
        <TrialScreen
          model={model}
          nowUs={nowUs}
          ascii={ascii}
          colour={colour}
          everyMs={everyMs}
          clearWindow={() => painter?.forget()}
        />
      </FramePainterContext>
    </ScreenErrorBoundary>,
    {
      stdin,
      stdout: spoken ? keepScrollback(stdout) : silentStdout(stdout),
      stderr,
      exitOnCtrlC: false,
      maxFps: 15,
      patchConsole: false,
    },
  );
  setImmediate(() => options.onDrawn?.());
  const stop = () => app.unmount();
  const silence = model.onIntent((intent) => {
    if (intent.kind === 'bell') {
      bells++;
      writer.write('\u0007');
      return;
    }
    onIntent(intent);
    if (intent.kind === 'quit') {
      why = 'quit';
      stop();
    }
  });
  signal?.addEventListener('abort', stop, { once: true });
  for (const end of END_SIGNALS) process.once(end, stop);
  if (signal?.aborted) stop();
  try {
    const value = await Promise.race([app.waitUntilExit(), failed]);
    if ((value as unknown) === INTERRUPTED) why = 'interrupted';
    return { why, bells };
  } finally {
    app.unmount();
    silence();
    signal?.removeEventListener('abort', stop);
    for (const end of END_SIGNALS) process.removeListener(end, stop);
    process.removeListener('exit', restore);
    painter?.stop();
    writer.write(BACK);
    await writer.drained(LONGEST_WAIT_MS);
  }
}
