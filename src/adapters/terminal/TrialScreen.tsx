import { type ReactNode, useCallback } from 'react';
import { rowText } from '../../core/chart/row-text.ts';
import { BURST_US } from '../../core/screen/classify-input.ts';
import { trialFrame } from '../../core/screen/trial-frame.ts';
import { trialView } from '../../core/screen/trial-view.ts';
import { FrameRows } from './FrameRows.tsx';
import type { Drawing } from './how-to-draw.ts';
import { rawInputs } from './raw-inputs.ts';
import { styledRowToAnsi } from './styled-row-to-ansi.ts';
import type { TrialScreenModel } from './TrialScreenModel.ts';
import { useKeys } from './use-keys.ts';
import { useScreenClock } from './use-screen-clock.ts';
import { useWindowSize } from './use-window-size.ts';

export interface TrialScreenProps {
  readonly model: TrialScreenModel;
  /** Host monotonic clock, µs. */
  readonly nowUs: () => number;
  readonly drawing: Drawing;
  /** Time between redraws, ms; at least 100. */
  readonly everyMs: number;
  readonly clearWindow: () => void;
}

/** Keys and scans are told apart by real time, whatever the speed of a simulation or replay. */
const handUs = () => performance.now() * 1000;

/** Draws the model's state a few times a second, ten at most, and hands keys to it. */
export function TrialScreen(props: TrialScreenProps): ReactNode {
  const { model, nowUs, drawing, everyMs, clearWindow } = props;
  const { ascii, colours } = drawing;
  const size = useWindowSize(clearWindow);
  const beat = useCallback(
    () => model.dispatch({ kind: 'tick', atUs: nowUs(), handUs: handUs() }),
    [model, nowUs],
  );
  const soon = useScreenClock(Math.max(100, everyMs), beat);
  useKeys((input, key) => {
    const atUs = nowUs();
    for (const raw of rawInputs(input, key, atUs, handUs()))
      model.dispatch({ kind: 'input', input: raw, atUs });
    soon(BURST_US / 1000 + 5);
  });
  const view = trialView(model.getState(), { ...size, ascii });
  const rows = trialFrame(view);
  const label = `${view.state.words.join(' ')}. ${view.figure.text} ${view.figure.unit}. ${view.facts.map((f) => f.text).join(' ')}`;
  return (
    <FrameRows
      lines={rows.map((row) => styledRowToAnsi(row, colours))}
      columns={rows[0] === undefined ? size.columns : rowText(rows[0]).length}
      label={label}
    />
  );
}
