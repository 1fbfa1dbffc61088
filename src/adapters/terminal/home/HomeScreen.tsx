import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { rowText } from '../../../core/chart/row-text.ts';
import { BURST_US } from '../../../core/screen/classify-input.ts';
import { homeView } from '../../../core/screen-home/home-view.ts';
import { shellFrame } from '../../../core/screen-shell/shell-frame.ts';
import { FrameRows } from '../FrameRows.tsx';
import type { Drawing } from '../how-to-draw.ts';
import { rawInputs } from '../raw-inputs.ts';
import { styledRowToAnsi } from '../styled-row-to-ansi.ts';
import { useKeys } from '../use-keys.ts';
import { useWindowSize } from '../use-window-size.ts';
import type { HomeModel } from './HomeModel.ts';

export interface HomeScreenProps {
  readonly model: HomeModel;
  /** Host monotonic clock, µs. */
  readonly nowUs: () => number;
  readonly drawing: Drawing;
  readonly clearWindow: () => void;
}

/** Messages go away by themselves; nothing else moves here without an event. */
const BEAT_MS = 500;

/** Draws the present page whenever it changed, and hands keys to the model. */
export function HomeScreen({ model, nowUs, drawing, clearWindow }: HomeScreenProps): ReactNode {
  const size = useWindowSize(clearWindow);
  const [state, setState] = useState(() => model.getState());
  useEffect(() => {
    const silence = model.onChange(() => setState(model.getState()));
    const timer = setInterval(() => model.dispatch({ kind: 'tick', atUs: nowUs() }), BEAT_MS);
    setState(model.getState());
    return () => {
      silence();
      clearInterval(timer);
    };
  }, [model, nowUs]);
  useKeys((input, key) => {
    const atUs = nowUs();
    for (const raw of rawInputs(input, key, atUs)) model.dispatch({ kind: 'input', input: raw, atUs });
    // A key that stood alone for the length of a burst was a key.
    setTimeout(() => model.dispatch({ kind: 'tick', atUs: nowUs() }), BURST_US / 1000 + 5);
  });
  const drawn = useMemo(() => {
    const rows = shellFrame(homeView(state), { ...size, ascii: drawing.ascii });
    return {
      lines: rows.map((row) => styledRowToAnsi(row, drawing.colours)),
      columns: rows[0] === undefined ? size.columns : rowText(rows[0]).length,
      label: rows.map((row) => rowText(row).trim()).join(' '),
    };
  }, [state, size, drawing]);
  return <FrameRows {...drawn} />;
}
