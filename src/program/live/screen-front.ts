import { createTrialScreenModel, runTrialScreen } from '../../adapters/terminal/index.ts';
import type { FrontOptions, TrialFront } from './TrialFront.ts';

/** The live trial on the terminal screen. */
export function screenFront({ setup, nowUs, onIntent, signal, ascii }: FrontOptions): TrialFront {
  const model = createTrialScreenModel(setup, nowUs());
  let stands: () => void = () => {};
  const drawn = new Promise<void>((resolve) => {
    stands = resolve;
  });
  const left = runTrialScreen({
    onDrawn: stands,
    model,
    nowUs,
    onIntent,
    signal,
    ascii,
    colour: !process.env.NO_COLOR,
  });
  return {
    show: (event) => model.dispatch(event),
    // A screen that fails to draw ends by `left`; nobody waits for its picture then.
    drawn: Promise.race([
      drawn,
      left.then(
        () => undefined,
        () => undefined,
      ),
    ]),
    left: left.then(({ why }) => why),
  };
}
