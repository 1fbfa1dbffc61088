import { type ReactNode, useCallback } from 'react';
import { rowText } from '../../../core/chart/row-text.ts';
import { BURST_US } from '../../../core/screen/classify-input.ts';
import type { ShellView } from '../../../core/screen-shell/ShellView.ts';
import { shellFrame } from '../../../core/screen-shell/shell-frame.ts';
import { FrameRows } from '../FrameRows.tsx';
import type { Drawing } from '../how-to-draw.ts';
import { rawInputs } from '../raw-inputs.ts';
import { styledRowToAnsi } from '../styled-row-to-ansi.ts';
import { useKeys } from '../use-keys.ts';
import { useScreenClock } from '../use-screen-clock.ts';
import { useWindowSize } from '../use-window-size.ts';
import type { PageEvent } from './PageModel.ts';

export interface PageScreenProps {
  readonly model: { dispatch(event: PageEvent): void; view(): ShellView };
  /** Clock of the page's reader, µs. */
  readonly nowUs: () => number;
  readonly drawing: Drawing;
  readonly clearWindow: () => void;
}

/** Digits change at most four times a second. */
const EVERY_MS = 250;

/** Draws a live page four times a second and hands keys to its model. */
export function PageScreen({ model, nowUs, drawing, clearWindow }: PageScreenProps): ReactNode {
  const size = useWindowSize(clearWindow);
  const beat = useCallback(() => model.dispatch({ kind: 'tick', atUs: nowUs() }), [model, nowUs]);
  const soon = useScreenClock(EVERY_MS, beat);
  useKeys((input, key) => {
    const atUs = nowUs();
    for (const raw of rawInputs(input, key, atUs)) model.dispatch({ kind: 'input', input: raw, atUs });
    soon(BURST_US / 1000 + 5);
  });
  const rows = shellFrame(model.view(), { ...size, ascii: drawing.ascii });
  return (
    <FrameRows
      lines={rows.map((row) => styledRowToAnsi(row, drawing.colours))}
      columns={rows[0] === undefined ? size.columns : rowText(rows[0]).length}
      label={rows.map((row) => rowText(row).trim()).join(' ')}
    />
  );
}
