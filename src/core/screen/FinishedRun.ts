/** A point of a run's bond line. */
export interface RunPoint {
  /** Since press closed. */
  readonly timeS: number;
  /** Coldest bond-line probe. */
  readonly temperatureC: number;
}

/** The bond line of a finished run, for the band behind the chart and the overlay of all runs. */
export interface FinishedRun {
  readonly recordingId: string;
  readonly runNumber: number;
  /** Its own verdict as it finished. */
  readonly good?: boolean;
  /** In order of time, a few hundred at most. */
  readonly points: readonly RunPoint[];
}
