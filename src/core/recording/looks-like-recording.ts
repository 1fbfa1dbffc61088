/** First line of every recording of this format version, without line end. */
export const RECORDING_FIRST_LINE = 'dwellwright-recording: 1';

/** True when the start of a text says that it is a recording (of any version); a byte order mark is forgiven. */
export function looksLikeRecording(headText: string): boolean {
  return /^\uFEFF?dwellwright-recording:/.test(headText);
}
