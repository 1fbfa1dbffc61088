/** What is said of recordings of platens beside their figures: what was left out, and why. */
export const WARM_UP_REMARKS = {
  notWhole: 'Note: the recording was cut short or altered after it was made.',
  withoutRise: (press: string, count: number) => `${press}: ${recordings(count)} without a rise left out.`,
  simulated: (press: string, count: number) =>
    `${press}: ${recordings(count)} that ${count === 1 ? 'is' : 'are'} simulated left out.`,
  beganWarm: (label: string, heating: number) =>
    `${label}: began warm, left out. --heating ${heating} compares it.`,
  alike: (side: string) =>
    `${side}: warm-ups that are the same to the last digit: one recording under several names?.`,
  surveyHeading: (name: string, press: string | undefined, simulated: boolean) =>
    `${name}: platen survey${press === undefined ? '' : ` of ${press}`}.${simulated ? ' SIMULATED.' : ''}`,
} as const;

function recordings(count: number): string {
  return count === 1 ? 'one recording' : `${count} recordings`;
}
