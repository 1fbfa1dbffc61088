import type { HomeIntent, LeavingIntent } from '../../../core/screen-home/HomeEvent.ts';
import { runOnOtherPage } from '../run-on-other-page.tsx';
import type { HomeModel } from './HomeModel.ts';
import { HomeScreen } from './HomeScreen.tsx';

export interface RunHomeScreenOptions {
  readonly model: HomeModel;
  /** Host monotonic clock, µs. */
  readonly nowUs: () => number;
  /** Every wish that does not leave the screen. */
  readonly onIntent: (intent: HomeIntent) => void;
  /** ASCII although the terminal shows more. */
  readonly ascii: boolean;
  /** Colour as far as the terminal has it. */
  readonly colour: boolean;
  /** Rejects when a wish could not be done for a reason nobody expects: the screen ends with it. */
  readonly failure: Promise<never>;
  /** Ends the screen from outside (signal). */
  readonly signal: AbortSignal;
  readonly stdin?: NodeJS.ReadStream;
  readonly stdout?: NodeJS.WriteStream;
  readonly stderr?: NodeJS.WriteStream;
}

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
  let leaving: LeavingIntent = { kind: 'quit' };
  await runOnOtherPage({
    stdin,
    stdout,
    stderr,
    maxFps: 30,
    signal,
    failure: options.failure,
    ascii,
    colour,
    draw: (clearWindow, drawing) => (
      <HomeScreen model={model} nowUs={nowUs} drawing={drawing} clearWindow={clearWindow} />
    ),
    listen: ({ stop }) =>
      model.onIntent((intent) => {
        if (LEAVES.has(intent.kind)) {
          leaving = intent as LeavingIntent;
          stop();
        } else {
          onIntent(intent);
        }
      }),
  });
  return leaving;
}
