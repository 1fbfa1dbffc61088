import { render } from 'ink';
import { FramePainterContext } from '../FrameRows.tsx';
import { createFramePainter } from '../frame-painter.ts';
import { keepScrollback } from '../keep-scrollback.ts';
import { ScreenErrorBoundary } from '../ScreenErrorBoundary.tsx';
import { silentStdout } from '../silent-stdout.ts';
import { createTerminalWriter } from '../terminal-writer.ts';
import type { PageIntent } from './PageModel.ts';
import { INTERRUPTED, PageScreen, type PageScreenProps } from './PageScreen.tsx';

export interface RunPageOptions extends Pick<PageScreenProps, 'nowUs' | 'ascii' | 'colour'> {
  readonly model: PageScreenProps['model'] & {
    onIntent(listener: (intent: PageIntent) => void): () => void;
  };
  /** Ends the page from outside (signal, end of a simulation). */
  readonly signal: AbortSignal;
}

const OTHER_SCREEN = '\u001b[?1049h\u001b[2J\u001b[H\u001b[?25l';
const BACK = '\u001b[?25h\u001b[?1049l';
const LONGEST_WAIT_MS = 1000;

/**
 * Shows a live page on the terminal's other page until it is left by its own `quit`, by Ctrl-C or by `signal`; then the
 * terminal is as before. Rings the bell on `bell`. A drawing error rejects.
 */
export async function runPage(options: RunPageOptions): Promise<'quit' | 'interrupted' | 'stopped'> {
  const { model, nowUs, ascii, colour, signal } = options;
  const { stdin, stdout, stderr } = process;
  const spoken = process.env.INK_SCREEN_READER === 'true';
  const writer = createTerminalWriter(stdout);
  const painter = spoken ? null : createFramePainter(writer);
  const restore = () => {
    if (writer.idle) stdout.write(BACK);
  };
  let why: 'quit' | 'interrupted' | 'stopped' = 'stopped';
  writer.write(OTHER_SCREEN);
  process.once('exit', restore);
  let fail: (error: Error) => void = () => {};
  const failed = new Promise<never>((_resolve, reject) => {
    fail = reject;
  });
  const app = render(
    <ScreenErrorBoundary onError={(error) => fail(error)}>
      <FramePainterContext value={painter}>
        <PageScreen
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
      maxFps: 15,
      patchConsole: false,
    },
  );
  const stop = () => app.unmount();
  const silence = model.onIntent(({ kind }) => {
    if (kind === 'bell') writer.write('\u0007');
    else if (kind === 'quit') {
      why = 'quit';
      stop();
    }
  });
  signal.addEventListener('abort', stop, { once: true });
  if (signal.aborted) stop();
  try {
    const value = await Promise.race([app.waitUntilExit(), failed]);
    return (value as unknown) === INTERRUPTED ? 'interrupted' : why;
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
