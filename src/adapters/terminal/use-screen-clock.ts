import { useEffect, useState } from 'react';

/** Redraws the caller every `everyMs` at most; `beat` is called just before. */
export function useScreenClock(everyMs: number, beat: () => void): void {
  const [, setCount] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => {
      beat();
      setCount((count) => (count + 1) % 1_000_000);
    }, everyMs);
    return () => clearInterval(timer);
  }, [everyMs, beat]);
}
