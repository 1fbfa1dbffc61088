import { render } from 'ink';
import type { ReactNode } from 'react';
import { FramePainterContext } from './FrameRows.tsx';
import { createFramePainter, type FramePainter } from './frame-painter.ts';
import { type Drawing, howToDraw } from './how-to-draw.ts';
import { keepScrollback } from './keep-scrollback.ts';
import { ScreenErrorBoundary } from './ScreenErrorBoundary.tsx';
import { silentStdout } from './silent-stdout.ts';
import { createTerminalWriter } from './terminal-writer.ts';

export interface OtherPageOptions {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
  readonly maxFps: number;
  /** ASCII although the terminal shows more. */
  readonly ascii: boolean;
  /** Colour as far as the terminal has it. */
  readonly colour: boolean;
  /** What is drawn, and how; the function forgets what stands in the window, so that the next draw paints all of it. */
  readonly draw: (clearWindow: () => void, drawing: Drawing) => ReactNode;
  /** Told once all is set up: how to leave and how to write past the drawing (bell). Returns how to stop listening. */
  readonly listen: (page: { stop(): void; write(text: string): void }) => () => void;
  /** Ends the page from outside. */
  readonly signal?: AbortSignal | undefined;
  /** Signals of the system that end the page, for a caller that has no listener of its own. */
  readonly endSignals?: readonly NodeJS.Signals[];
  /** Called once the first picture has been handed to the terminal. */
  readonly onDrawn?: (() => void) | undefined;
  /** Rejects when the page must end for a reason that nobody expects. */
  readonly failure?: Promise<never>;
}

const OTHER_SCREEN = '\u001b[?1049h\u001b[2J\u001b[H\u001b[?25l';
const BACK = '\u001b[?25h\u001b[?1049l';
/** A terminal that stands still for longer keeps its state: the program goes on to its end. */
const LONGEST_WAIT_MS = 1000;

/**
 * Shows something on the terminal's other page until it is left; then the terminal is as before, however that came.
 * Resolves with the value that the drawn app ended with. A drawing error rejects.
 */
export async function runOnOtherPage(options: OtherPageOptions): Promise<unknown> {
  const { stdin, stdout, stderr, signal, endSignals = [] } = options;
  // A screen reader gets ink's own lines instead of a drawing.
  const spoken = process.env.INK_SCREEN_READER === 'true';
  const drawing = howToDraw(options, process.env, process.platform);
  const writer = createTerminalWriter(stdout);
  const painter: FramePainter | null = spoken ? null : createFramePainter(writer);
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
        {options.draw(() => painter?.forget(), drawing)}
      </FramePainterContext>
    </ScreenErrorBoundary>,
    {
      stdin,
      stdout: spoken ? keepScrollback(stdout) : silentStdout(stdout),
      stderr,
      exitOnCtrlC: false,
      maxFps: options.maxFps,
      patchConsole: false,
    },
  );
  setImmediate(() => options.onDrawn?.());
  const stop = () => app.unmount();
  const silence = options.listen({ stop, write: (text) => writer.write(text) });
  signal?.addEventListener('abort', stop, { once: true });
  for (const end of endSignals) process.once(end, stop);
  // What nobody catches would end the program on this page, its message gone with it: leave the page first.
  process.on('uncaughtException', fail);
  if (signal?.aborted) stop();
  try {
    return await Promise.race([
      app.waitUntilExit(),
      failed,
      ...(options.failure === undefined ? [] : [options.failure]),
    ]);
  } finally {
    app.unmount();
    silence();
    signal?.removeEventListener('abort', stop);
    for (const end of endSignals) process.removeListener(end, stop);
    process.removeListener('exit', restore);
    process.removeListener('uncaughtException', fail);
    painter?.stop();
    writer.write(BACK);
    await writer.drained(LONGEST_WAIT_MS);
  }
}
