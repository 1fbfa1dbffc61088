import { fewRuns } from '../trial/few-runs.ts';
import type { OddRun } from '../trial/odd-run.ts';
import type { OddRunCause } from '../trial/odd-run-causes.ts';
import type { TrialStatistics } from '../trial/TrialResult.ts';
import { differenceText, numberText, secondsText, slopeText, type TemperatureUnit } from './units-text.ts';

export { LEFT_OUT_WHY } from './left-out-text.ts';

/** The figures of a trial in plain lines, for a result without a screen. */
export function trialLines(statistics: TrialStatistics): readonly string[] {
  const { runs, meanSoakS } = statistics;
  if (meanSoakS === null) return ['No run counts yet: there is no soak time to state.'];
  if (runs === 1) return [`1 run counts: soak time ${fixed(meanSoakS)} s.`, ...trialRemarks(statistics)];
  return [
    `${runs} runs count: mean soak time ${fixed(meanSoakS)} s, standard deviation ${fixed(statistics.sdSoakS)} s, ` +
      `${fixed(statistics.minSoakS)} to ${fixed(statistics.maxSoakS)} s (range ${fixed(statistics.rangeSoakS)} s).`,
    `Mean lies within ${fixed(statistics.meanCi95S?.[0] ?? null)} to ${fixed(statistics.meanCi95S?.[1] ?? null)} s (95 %); ` +
      `the next run stays below ${fixed(statistics.nextRunUpper95S)} s (95 %, one-sided).`,
    ...trialRemarks(statistics),
  ];
}

/** What a reader must know beside the figures: how little few runs say, what spread is missing, what is short. */
export function trialRemarks(statistics: TrialStatistics): readonly string[] {
  const remarks: string[] = [];
  if (statistics.fromOnset) {
    remarks.push(
      'All soak times are from the onset of the rise: they lack the delay through the part and are short, the unsafe side.',
    );
  }
  if (statistics.runs === 1) {
    remarks.push('One run says nothing about the spread: the recipe can only be provisional.');
  }
  if (statistics.partSpreadMissing && statistics.runs > 1) {
    remarks.push(
      'As far as stated, all runs share one part and one probe position: the spread from part to part is in none of these bounds.',
    );
  }
  remarks.push(...fewRunsRemark(statistics), ...moreRunsRemark(statistics));
  return remarks;
}

function fewRunsRemark(statistics: TrialStatistics): readonly string[] {
  const tell = fewRuns(statistics);
  if (tell === null) return [];
  const [fourth, fifth] = tell.later;
  const word = statistics.runs === 2 ? 'Two' : 'Three';
  const next = (one: typeof fourth) => `${spread(one?.meanHalfWidthS)} and ${spread(one?.nextRunAboveMeanS)}`;
  return [
    `${word} runs tell little: the mean may be off by ${spread(tell.now.meanHalfWidthS)}, and the bound for the next run lies ` +
      `${spread(tell.now.nextRunAboveMeanS)} above it. If the spread stays as it is, a fourth run makes that about ` +
      `${next(fourth)}, a fifth about ${next(fifth)}.`,
  ];
}

/** The odd run in words: how far out, what else was different, and that the decision is a person's. */
export function oddRunText(odd: OddRun, unit: TemperatureUnit = 'F'): string {
  const way = odd.differenceS > 0 ? 'slower' : 'faster';
  const found = odd.causes.map((cause) => oddRunCauseText(cause, unit)).join('; ');
  return (
    `${odd.run.source}, run ${odd.run.result.runNumber}: ${secondsText(Math.abs(odd.differenceS))} ${way} than the others, farther out than chance allows ` +
    `(Grubbs ${numberText(odd.g, 2)}, limit ${numberText(odd.critical, 2)}). ` +
    `${found === '' ? 'Nothing else was different about it' : `Also different: ${found}`}. It still counts; set it aside only for a reason you can name.`
  );
}

function oddRunCauseText(cause: OddRunCause, unit: TemperatureUnit): string {
  switch (cause.kind) {
    case 'start':
      return `carrier started ${apart(cause.differenceC, unit)}, about ${signed(cause.explainsS)} of soak time`;
    case 'upper-platen':
      return `upper platen ${apart(cause.differenceC, unit)}, about ${signed(cause.explainsS)}`;
    case 'lower-platen':
      return `lower platen ${apart(cause.differenceC, unit)}, about ${signed(cause.explainsS)}`;
    case 'slope':
      return `heated ${slopeText(Math.abs(cause.differenceCPerS), unit)} ${cause.differenceCPerS > 0 ? 'faster' : 'slower'} at the crossing`;
    case 'plateau':
      return `its curve levels out ${apart(cause.differenceC, unit)}`;
    case 'time-constant':
      return `its time constant ${secondsText(Math.abs(cause.differenceS))} ${cause.differenceS > 0 ? 'longer' : 'shorter'}`;
    case 'onset-delay':
      return `rise began ${secondsText(Math.abs(cause.differenceS))} ${cause.differenceS > 0 ? 'later' : 'sooner'} after press closed`;
    case 'press-closed-by':
      return `press closed known by ${cause.by}, unlike the others`;
  }
}

function apart(differenceC: number, unit: TemperatureUnit): string {
  return `${differenceText(Math.abs(differenceC), unit)} ${differenceC > 0 ? 'hotter' : 'colder'}`;
}

function signed(seconds: number): string {
  return `${seconds > 0 ? '+' : '−'}${secondsText(Math.abs(seconds))}`;
}

function spread(seconds: number | undefined): string {
  return `${numberText(seconds ?? null, 1)} s`;
}

function moreRunsRemark({ runs, moreRunsForWidth, wantedHalfWidthS }: TrialStatistics): readonly string[] {
  if (runs < 2) return [];
  const wish = `bring the mean inside ±${secondsText(wantedHalfWidthS, 2)} (95 %)`;
  if (moreRunsForWidth === null)
    return [`More runs than anyone would make would be needed to ${wish}: find what varies.`];
  if (moreRunsForWidth === 0) return [];
  return [
    `About ${moreRunsForWidth} more ${moreRunsForWidth === 1 ? 'run' : 'runs'} would ${wish}, if the spread stays as it is.`,
  ];
}

function fixed(seconds: number | null): string {
  return numberText(seconds, 2);
}
