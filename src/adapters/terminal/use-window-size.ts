import { useStdout } from 'ink';
import { useEffect, useState } from 'react';

export interface WindowSize {
  readonly columns: number;
  readonly rows: number;
}

/** Size of the terminal's window; follows resizes. `onResize` is called before the new size is drawn. */
export function useWindowSize(onResize: () => void): WindowSize {
  const { stdout } = useStdout();
  const [size, setSize] = useState<WindowSize>(() => sizeOf(stdout));
  useEffect(() => {
    const follow = () => {
      onResize();
      setSize(sizeOf(stdout));
    };
    stdout.on('resize', follow);
    return () => {
      stdout.off('resize', follow);
    };
  }, [stdout, onResize]);
  return size;
}

function sizeOf(stdout: NodeJS.WriteStream): WindowSize {
  return { columns: stdout.columns || 80, rows: stdout.rows || 24 };
}
