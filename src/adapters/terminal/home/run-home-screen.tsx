import { render } from 'ink';
import type { HomeIntent, LeavingIntent } from '../../../core/screen-home/HomeEvent.ts';
import { FramePainterContext } from '../FrameRows.tsx';
import { createFramePainter } from '../frame-painter.ts';
import { keepScrollback } from '../keep-scrollback.ts';
import { ScreenErrorBoundary } from '../ScreenErrorBoundary.tsx';
import { silentStdout } from '../silent-stdout.ts';
import { createTerminalWriter } from '../terminal-writer.ts';
import type { HomeModel } from './HomeModel.ts';
import { HomeScreen } from './HomeScreen.tsx';

export interface RunHomeScreenOptions {
  readonly model: HomeModel;
  /** Host monotonic clock, µs. */
  readonly nowUs: () => number;
  /** Every wish that does not leave the screen. */
  readonly onIntent: (intent: HomeIntent) => void;
  readonly ascii: boolean;
  readonly colour: boolean;
  /** Rejects when a wish could not be done for a reason nobody expects: the screen ends with it. */
  readonly failure: Promise<never>;
  /** Ends the screen from outside (signal). */
  readonly signal: AbortSignal;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
  readonly stderr?: NodeJS.WriteStream;
}

const OTHER_SCREEN = '\u001b[?1049h\u001b[2J\u001b[H\u001b[?25l';
const BACK = '\u001b[?25h\u001b[?1049l';
const LONGEST_WAIT_MS = 1000;
const LEAVES: ReadonlySet<HomeIntent['kind']> = new Set<LeavingIntent['kind']>([
  'start-trial',
  'replay',
  'demo',
  'entry',
  'quit',
]);

/**
 * Shows the screens around the trial on the terminal's other page until one of them is left for something else; then
 * the terminal is as before. Ctrl-C and `signal` count as leaving the program. A drawing error rejects.
 */
export async function runHomeScreen(options: RunHomeScreenOptions): Promise<LeavingIntent> {
  const { model, nowUs, onIntent, ascii, colour, signal } = options;
  const { stdin = process.stdin, stdout = process.stdout, stderr = process.stderr } = options;
  const spoken = process.env.INK_SCREEN_READER === 'true';
  const writer = createTerminalWriter(stdout);
  const painter = spoken ? null : createFramePainter(writer);
  const restore = () => {
    if (writer.idle) stdout.write(BACK);
  };
  let leaving: LeavingIntent = { kind: 'quit' };
  writer.write(OTHER_SCREEN);
  process.once('exit', restore);
  let fail: (error: Error) => void = () => {};
  const failed = new Promise<never>((_resolve, reject) => {
    fail = reject;
  });
  const app = render(
    <ScreenErrorBoundary onError={(error) => fail(error)}>
      <FramePainterContext value={painter}>
        <HomeScreen
          model={model}
          nowUs={nowUs}
          ascii={ascii}
          colour={colour}
          clearWindow={() => painter?.forget()}
        />
      </FramePainterContext>
    </ScreenErrorBoundary>,
    {
      stdin,
      stdout: spoken ? keepScrollback(stdout) : silentStdout(stdout),
      stderr,
      exitOnCtrlC: false,
      maxFps: 30,
      patchConsole: false,
    },
  );
  const stop = () => app.unmount();
  const silence = model.onIntent((intent) => {
    if (LEAVES.has(intent.kind)) {
      leaving = intent as LeavingIntent;
      stop();
    } else {
      onIntent(intent);
    }
  });
  signal.addEventListener('abort', stop, { once: true });
  if (signal.aborted) stop();
  try {
    await Promise.race([app.waitUntilExit(), failed, options.failure]);
    return leaving;
  } finally {
    app.unmount();
    silence();
    signal.removeEventListener('abort', stop);
    process.removeListener('exit', restore);
    painter?.stop();
    writer.write(BACK);
    await writer.drained(LONGEST_WAIT_MS);
  }
}
