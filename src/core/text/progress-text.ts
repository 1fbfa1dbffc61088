import type { RunState } from '../run/RunEvent.ts';
import type { Crossing, PressClosed, RunResult } from '../run/RunResult.ts';
import { runReasonText } from './run-reasons.ts';
import { numberText, slopeText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** Sentences of a trial without a terminal, each beginning with the time on the recording. */
export function progressText(unit: TemperatureUnit) {
  const at = (timeS: number) => `${numberText(timeS, 1)} s`;
  return {
    simulated: 'SIMULATED reader: nothing here comes from a press.',
    readerLost: (cause: string) =>
      `Reader lost: unplugged or without power (${cause}). It is taken up again by itself; the run goes on.`,
    readerBack: 'Reader back.',
    storeTrouble: (trouble: string) => `Store: ${trouble}`,
    refused: (detail: string) => `Readings cannot be used: ${detail}`,
    gap: (timeS: number | null) =>
      timeS === null ? 'Gap in the readings.' : `${at(timeS)} gap in the readings`,
    pressClosed: ({ timeS, by }: PressClosed) => `${at(timeS)} press closed (${by})`,
    onset: (timeS: number) => `${at(timeS)} onset of the rise`,
    crossing: ({ timeS, slopeCPerS }: Crossing, channel: number, kind: 'provisional' | 'final') =>
      `${numberText(timeS, kind === 'final' ? 2 : 1)} s crossing, ${kind} (channel ${channel}), rising ${slopeText(slopeCPerS, unit)}`,
    dip: (timeS: number) => `${at(timeS)} below target again`,
    holdDone: (timeS: number, { holdDips = 0, holdSeen = true }: Pick<RunState, 'holdDips' | 'holdSeen'>) =>
      !holdSeen
        ? `${at(timeS)} hold not verified: readings were missing in it`
        : `${at(timeS)} hold done${holdDips === 0 ? '' : `, after ${holdDips === 1 ? 'a dip' : `${holdDips} dips`}`}`,
    contact: (kind: 'contact-let-go' | 'contact-again', timeS: number) =>
      kind === 'contact-let-go'
        ? `${at(timeS)} contact let go at once: a pedal, not the press`
        : `${at(timeS)} pedal again before the hold is done: nothing marked`,
    openingHinted: (timeS: number) => `${at(timeS)} temperature falls steeply: opened?`,
    opened: (timeS: number) => `${at(timeS)} opened`,
    runFinished: (result: RunResult): readonly string[] => {
      const start = result.startC === null ? '' : `, start ${temperatureText(result.startC, unit)}`;
      const uncertaintyS = result.soakTimeStandardUncertaintyS;
      const doubt = uncertaintyS === null ? '' : ` (standard uncertainty ${numberText(uncertaintyS, 2)} s)`;
      const soak =
        result.soakTimeS === null ? 'no soak time' : `soak time ${numberText(result.soakTimeS, 2)} s${doubt}`;
      return [
        `run ${result.runNumber} finished: ${soak}${start}, ${result.verdict}`,
        ...result.reasons.map((reason) => `  ${runReasonText(reason, { unit })}`),
      ];
    },
  };
}
