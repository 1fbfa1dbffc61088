/** A stored run on the trial screen. */
export const REPLAY_TEXT = {
  badge: ({ speed, paused }: { readonly speed: number; readonly paused: boolean }) =>
    paused ? `REPLAY HALTED ×${speed}` : `REPLAY ×${speed}`,
  reader: (run: number) => `stored run ${run}`,
  over: 'The replay has come to the end of the run. Q leaves it.',
  keys: {
    pause: { key: 'P', does: 'halt' },
    goOn: { key: 'P', does: 'go on' },
    faster: { key: '+', does: 'faster' },
    slower: { key: '-', does: 'slower' },
  },
} as const;
