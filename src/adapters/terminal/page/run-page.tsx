import { runOnOtherPage } from '../run-on-other-page.tsx';
import { INTERRUPTED } from '../use-keys.ts';
import type { PageIntent } from './PageModel.ts';
import { PageScreen, type PageScreenProps } from './PageScreen.tsx';

export interface RunPageOptions extends Pick<PageScreenProps, 'nowUs'> {
  /** ASCII although the terminal shows more. */
  readonly ascii: boolean;
  /** Colour as far as the terminal has it. */
  readonly colour: boolean;
  readonly model: PageScreenProps['model'] & {
    onIntent(listener: (intent: PageIntent) => void): () => void;
  };
  /** Ends the page from outside (signal, end of a simulation). */
  readonly signal: AbortSignal;
}

/**
 * Shows a live page on the terminal's other page until it is left by its own `quit`, by Ctrl-C or by `signal`; then the
 * terminal is as before. Rings the bell on `bell`. A drawing error rejects.
 */
export async function runPage(options: RunPageOptions): Promise<'quit' | 'interrupted' | 'stopped'> {
  const { model, nowUs, ascii, colour, signal } = options;
  const { stdin, stdout, stderr } = process;
  let why: 'quit' | 'interrupted' | 'stopped' = 'stopped';
  const value = await runOnOtherPage({
    stdin,
    stdout,
    stderr,
    maxFps: 15,
    signal,
    ascii,
    colour,
    draw: (clearWindow, drawing) => (
      <PageScreen model={model} nowUs={nowUs} drawing={drawing} clearWindow={clearWindow} />
    ),
    listen: ({ stop, write }) =>
      model.onIntent(({ kind }) => {
        if (kind === 'bell') write('\u0007');
        else if (kind === 'quit') {
          why = 'quit';
          stop();
        }
      }),
  });
  return value === INTERRUPTED ? 'interrupted' : why;
}
