/** What helps where a chart of a survey, a re-check or a lot has nothing to show, by its view. */
export const NOTHING_TO_DRAW = {
  presses: 'No run of either trial counts: see why with dwellwright trials ID',
  survey: 'The places of the probes are not known: give --positions',
  recheck: 'No run has a soak time: see why with dwellwright recheck',
  'what-if': 'No target gives a dwell: see dwellwright recheck --targets 340F,350F',
  lot: 'No cycle has readings of the bond line; --view closed shows the times alone',
  difference:
    'No cycle has readings of the bond line, or the runs that the recipe rests on are not in this store; --view lot or closed show what there is',
  closed: 'Two cycles or more are needed: dwellwright bond --cycles lists them',
} as const;
