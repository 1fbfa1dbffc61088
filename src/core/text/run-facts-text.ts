import { numberText, secondsText } from './units-text.ts';

/** Words beside the figure of a run: how long, how long to go, what came of it. */
export const RUN_FACTS = {
  closed: (elapsed: string, by: string) => `closed ${elapsed} ago (${by})`,
  holdSeen: (countedS: number, wantedS: number) =>
    `hold seen ${numberText(countedS, 0)} s of ${secondsText(wantedS)}`,
  estimate: {
    tooEarly: 'target: too early to say',
    levelsOut: 'target: levels out below it so far',
    notRising: 'target: not rising',
    about: (restS: number, earliestS: number, latestS: number | null) =>
      `target in about ${numberText(restS, 0)} s (${numberText(earliestS, 0)} ${
        latestS === null ? 'or never' : `to ${numberText(latestS, 0)} s`
      })`,
  },
  soakUnknown: 'soak time not known',
  soak: (soakS: number, provisional: boolean, rate: string) =>
    `soak time ${numberText(soakS, 1)} s${provisional ? ', provisional' : ''}  ${rate}`,
  result: (number: number, soakS: number | null) =>
    `${number > 0 ? `run ${number}: ` : ''}${soakS === null ? 'no soak time' : `soak time ${numberText(soakS, 2)} s`}`,
  bondLine: (first: string, second: string) => `bond line ${first} = ${second}`,
  old: (value: string, ageS: number) => `${value}, ${numberText(ageS, 0)} s old`,
  /** Under the seconds seen of a hold that is not verified. */
  ofHold: (wantedS: number) => `seen of ${secondsText(wantedS, 0)} hold`,
  others: (value: string) => `others' coldest ${value}`,
  noValue: 'no value',
  noRun: 'no run yet',
  /** Where a table holds not all of them. */
  someRuns: (first: number, last: number, of: number) => `runs ${first} to ${last} of ${of} runs`,
  oneRun: (soakS: number) => `1 run counts: ${numberText(soakS, 1)} s`,
  mean: (meanS: number, halfS: number) => `mean ${numberText(meanS, 2)} s ± ${numberText(halfS, 2)} s`,
  spread: (sdS: number, runs: number) => `spread ${numberText(sdS, 2)} s, ${runs} runs`,
  setAside: 'set aside',
  takenIn: 'taken in',
} as const;

/** An assembly on a press, for a title. */
export const onPress = (assembly: string, press: string): string => `${assembly} on press ${press}`;
