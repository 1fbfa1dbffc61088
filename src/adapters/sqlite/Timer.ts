/** What the group commit needs of a timer; tests bring one that they move by hand. */
export interface Timer {
  /** Milliseconds from an arbitrary start, never running backwards. */
  nowMs(): number;
  /** Calls once after the delay, unless the returned function is called before. */
  after(delayMs: number, call: () => void): () => void;
}

/** The host's timer. Not unreferenced: what waits for the disk keeps the program alive for the few ms that it needs. */
export const hostTimer: Timer = {
  nowMs: () => performance.now(),
  after: (delayMs, call) => {
    const handle = setTimeout(call, delayMs);
    return () => clearTimeout(handle);
  },
};
