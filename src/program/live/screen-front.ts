import { createTrialScreenModel, runTrialScreen } from '../../adapters/terminal/index.ts';
import type { FrontOptions, TrialFront } from './TrialFront.ts';

/** The live trial on the terminal screen. */
export function screenFront({ setup, nowUs, onIntent, signal, ascii }: FrontOptions): TrialFront {
  const model = createTrialScreenModel(setup, nowUs());
  const left = runTrialScreen({ model, nowUs, onIntent, signal, ascii, colour: !process.env.NO_COLOR });
  return {
    show: (event) => model.dispatch(event),
    left: left.then(({ why }) => why),
  };
}
