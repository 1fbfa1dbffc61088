import { Text, Transform } from 'ink';
import { createContext, memo, type ReactNode, useContext, useLayoutEffect, useMemo } from 'react';
import type { FramePainter } from './frame-painter.ts';

/** Who draws the rows; null: ink itself, as for screen readers. */
export const FramePainterContext = createContext<FramePainter | null>(null);

export interface FrameRowsProps {
  /** Rows as terminal text, all equally wide. */
  readonly lines: readonly string[];
  readonly columns: number;
  /** The same in a sentence or two, for screen readers. */
  readonly label: string;
}

/**
 * Draws rows through the frame painter, past ink's layout, which would cut every row into its characters at every draw.
 * Without a painter: through a transform over constant blanks, so that ink's text caches stay the same size however
 * often the rows change.
 */
export const FrameRows = memo(function FrameRows({ lines, columns, label }: FrameRowsProps): ReactNode {
  const painter = useContext(FramePainterContext);
  useLayoutEffect(() => painter?.paint(lines), [painter, lines]);
  const rows = painter === null ? lines.length : 1;
  const blanks = useMemo(
    () => new Array<string>(rows).fill('.'.repeat(painter === null ? columns : 1)).join('\n'),
    [rows, columns, painter],
  );
  if (painter !== null) return <Text>{blanks}</Text>;
  return (
    <Transform transform={(_blank, index) => lines[index] ?? ''} accessibilityLabel={label}>
      <Text wrap="truncate">{blanks}</Text>
    </Transform>
  );
});
