import { Text, Transform } from 'ink';
import { memo, type ReactNode, useMemo } from 'react';

export interface FrameRowsProps {
  /** Rows as terminal text, all equally wide. */
  readonly lines: readonly string[];
  readonly columns: number;
  /** The same in a sentence or two, for screen readers. */
  readonly label: string;
}

/**
 * Draws rows through a transform over constant blanks: ink measures and keeps only the blanks, so its text
 * caches stay the same size however often the rows change.
 */
export const FrameRows = memo(function FrameRows({ lines, columns, label }: FrameRowsProps): ReactNode {
  const blanks = useMemo(
    () => new Array<string>(lines.length).fill('.'.repeat(columns)).join('\n'),
    [lines.length, columns],
  );
  return (
    <Transform transform={(_blank, index) => lines[index] ?? ''} accessibilityLabel={label}>
      <Text wrap="truncate">{blanks}</Text>
    </Transform>
  );
});
