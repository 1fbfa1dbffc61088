import { AMBIENT_KEY } from '../recording/head-ambient.ts';
import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import { formatContact, formatIdentity, formatSample } from '../wire/protocol/index.ts';
import type { ChannelValue } from '../wire/WireEvent.ts';
import { createDelay } from './create-arrivals.ts';
import { createRandom } from './create-random.ts';
import { SIMULATED_RATES_HZ } from './create-reader-voice.ts';
import type { SimulatedRecording } from './simulate-recording.ts';
import type { WarmUpScenario } from './warm-up-scenarios.ts';
import { simulateWarmUp, WARM_UP_STEP_S } from './warm-up-simulation.ts';
import { warmUpTruth } from './warm-up-truth.ts';

export const WARM_UP_NOISE_C = 0.13;
/** Reader's steps, °C; device clock at the first sample, µs, and its drift against true time. */
export const WARM_UP_STEP_C = 0.25;
const CLOCK_START_US = 12_340_000;
const DRIFT = 18e-6;

export type TimedLine = { readonly timeS: number } & (
  | { readonly kind: 'sample'; readonly channels: readonly ChannelValue[] }
  | { readonly kind: 'contact'; readonly closed: boolean }
  | { readonly kind: 'mark'; readonly mark: Extract<RecordingEntry, { kind: 'mark' }>['mark'] }
);

/** The recording that a host would have made of this warm-up; in its head what really happened. Same scenario, same bytes. */
export function simulateWarmUpRecording(scenario: WarmUpScenario): SimulatedRecording {
  return {
    head: {
      recordingId: `simulated-${scenario.name}`,
      madeAt: scenario.madeAt,
      program: 'Dwellwright simulator',
      roles: ['ambient', 'unused', 'upper-platen', 'lower-platen'],
      simulated: true,
      pressName: scenario.pressName,
      platenSetPointC: { upper: scenario.upper.setPointC, lower: scenario.lower.setPointC },
      further: { [AMBIENT_KEY]: String(scenario.ambientC), ...warmUpTruth(scenario) },
    },
    entries: entriesOf(scenario, linesOf(scenario), 4),
  };
}

function linesOf(scenario: WarmUpScenario): readonly TimedLine[] {
  const random = createRandom(scenario.seed + 1);
  const every = Math.round(1 / scenario.rateHz / WARM_UP_STEP_S);
  const lines: TimedLine[] = [];
  let step = 0;
  for (const { timeS, upperProbeC, lowerProbeC } of simulateWarmUp(scenario)) {
    if (step++ % every !== 0) continue;
    const channels: ChannelValue[] = [
      sent(scenario.ambientC + WARM_UP_NOISE_C * random.normal()),
      { kind: 'fault', fault: 'open-circuit' },
      sent(upperProbeC + WARM_UP_NOISE_C * random.normal()),
      sent(lowerProbeC + WARM_UP_NOISE_C * random.normal()),
    ];
    lines.push({ kind: 'sample', timeS, channels });
  }
  lines.push({ kind: 'mark', timeS: scenario.powerOnS, mark: { kind: 'note', text: 'heaters on' } });
  for (const [timeS, closed] of [
    [scenario.partInS, true],
    [scenario.partOutS, false],
  ] as const) {
    if (scenario.hasContact) lines.push({ kind: 'contact', timeS, closed });
    else
      lines.push({ kind: 'mark', timeS: timeS + 0.15, mark: { kind: closed ? 'press-closed' : 'opened' } });
  }
  return lines.sort((a, b) => a.timeS - b.timeS);
}

/** Lines as the reader sends them and keys as pressed, with their arrival at the host. */
export function entriesOf(
  { seed, rateHz, hasContact }: Pick<WarmUpScenario, 'seed' | 'rateHz' | 'hasContact'>,
  lines: readonly TimedLine[],
  channels: number,
): readonly RecordingEntry[] {
  const delayS = createDelay(seed);
  const deviceTimeUs = (timeS: number) => CLOCK_START_US + Math.round(timeS * 1e6 * (1 + DRIFT));
  let sequence = 0;
  let latestUs = 0;
  const arrived = (timeS: number) => {
    latestUs = Math.max(latestUs, Math.round((timeS + 0.05 + delayS()) * 1e6));
    return latestUs;
  };
  const identity = formatIdentity({
    name: 'simulated-reader',
    firmwareVersion: '1.0',
    serialNumber: '0001',
    channels: Array.from({ length: channels }, (_, index) => ({
      number: index + 1,
      name: null,
      thermocoupleType: 'K' as const,
      sends: 'temperature' as const,
      resolutionC: WARM_UP_STEP_C,
    })),
    ratesHz: SIMULATED_RATES_HZ,
    hasContact,
    rateHz,
  });
  const line = (timeS: number, text: string): RecordingEntry => ({
    kind: 'line',
    arrivedUs: arrived(timeS),
    text,
    wholeness: 'whole',
  });
  return [
    line(-0.02, identity),
    ...lines.map((one): RecordingEntry => {
      if (one.kind === 'mark')
        return { kind: 'mark', arrivedUs: arrived(one.timeS), by: 'key', mark: one.mark };
      if (one.kind === 'contact')
        return line(
          one.timeS + 0.02,
          formatContact({ closed: one.closed, deviceTimeUs: deviceTimeUs(one.timeS) }),
        );
      const text = formatSample({
        sequence: sequence++,
        deviceTimeUs: deviceTimeUs(one.timeS),
        channels: one.channels,
      });
      return line(one.timeS + 0.004, text);
    }),
  ];
}

export function sent(temperatureC: number): ChannelValue {
  return {
    kind: 'temperature',
    temperatureC: Math.round(temperatureC / WARM_UP_STEP_C) * WARM_UP_STEP_C + 0,
  };
}
