import { useCallback, useEffect, useRef, useState } from 'react';

/**
 * Redraws the caller every `everyMs`; `beat` is called just before. Returns `soon`, which beats and redraws once
 * more after `afterMs`, so that a key shows its effect without waiting for the next round.
 */
export function useScreenClock(everyMs: number, beat: () => void): (afterMs: number) => void {
  const [, setCount] = useState(0);
  const extra = useRef<ReturnType<typeof setTimeout> | null>(null);
  const round = useCallback(() => {
    beat();
    setCount((count) => (count + 1) % 1_000_000);
  }, [beat]);
  useEffect(() => {
    const timer = setInterval(round, everyMs);
    return () => {
      clearInterval(timer);
      if (extra.current !== null) clearTimeout(extra.current);
    };
  }, [everyMs, round]);
  return useCallback(
    (afterMs) => {
      if (extra.current !== null) clearTimeout(extra.current);
      extra.current = setTimeout(round, afterMs);
    },
    [round],
  );
}
