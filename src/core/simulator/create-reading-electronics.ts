import { emfFromTemperatureUv } from '../thermocouple/emf-from-temperature-uv.ts';
import { readingFromEmf } from '../thermocouple/reading-from-emf.ts';
import type { ChannelValue, ThermocoupleType } from '../wire/WireEvent.ts';
import { createInterference } from './create-interference.ts';
import type { PressMoment } from './create-press-simulation.ts';
import type { RandomSource } from './create-random.ts';
import type { ChannelTrouble, Scenario } from './Scenario.ts';

/** Smallest steps of a reader that sends emf: 1 µV and 1/16 °C. */
const EMF_STEP_UV = 1;
const COLD_JUNCTION_STEP_C = 0.0625;
/** What a converter shows when its input floats to the rail. */
const FULL_SCALE_C = 1370;

/** From a probe's temperature to what the reader sends for one channel: wires, emf, cold junction, noise, steps. */
export function createReadingElectronics(scenario: Scenario, channel: number, random: RandomSource) {
  const { reader } = scenario;
  const troubles = scenario.channelTroubles.filter((trouble) => trouble.channel === channel);
  const interference = createInterference(troubles, random);
  const innovationC = reader.correlatedNoiseC * Math.sqrt(1 - reader.correlation ** 2);
  let correlatedC = reader.correlatedNoiseC * random.normal();
  let fullScaleLeft: number | null = null;

  function read(probeC: number, moment: PressMoment): ChannelValue {
    correlatedC = reader.correlation * correlatedC + innovationC * random.normal();
    const noiseC = reader.whiteNoiseC * random.normal() + correlatedC + interference(moment);
    const fault = troubles.find(
      (t) => t.kind === 'fault' && moment.timeS >= t.fromS && moment.timeS < t.toS,
    ) as (ChannelTrouble & { kind: 'fault' }) | undefined;
    if (fault !== undefined) return { kind: 'fault', fault: fault.fault };
    const full = troubles.find((t) => t.kind === 'full-scale') as
      | (ChannelTrouble & { kind: 'full-scale' })
      | undefined;
    if (full !== undefined && moment.timeS >= full.atS) {
      fullScaleLeft ??= full.samples;
      if (fullScaleLeft > 0) {
        fullScaleLeft -= 1;
        return sentValue(emfAtReaderUv(FULL_SCALE_C, moment, [], scenario), scenario);
      }
    }
    const emfUv = emfAtReaderUv(probeC, moment, troubles, scenario);
    return sentValue(emfUv + noiseC * sensitivityUvPerC(reader.thermocoupleType, probeC), scenario);
  }

  return { read };
}

/** emf that reaches the reader's terminals, µV, before noise: junction, extension lead, plug. */
function emfAtReaderUv(
  probeC: number,
  moment: PressMoment,
  troubles: readonly ChannelTrouble[],
  { reader }: Scenario,
): number {
  let junctionC = probeC;
  let wire = reader.thermocoupleType;
  let headC: number | null = null;
  let sign = 1;
  for (const trouble of troubles) {
    if (trouble.kind === 'second-junction' && moment.closed) {
      junctionC += trouble.share * (moment.lowerPlatenC - probeC);
    }
    if (trouble.kind === 'wire-type') wire = trouble.wire;
    if (trouble.kind === 'plug-reversed') sign = -1;
    if (trouble.kind === 'extension-reversed') headC = trouble.headC;
  }
  const coldUv = emfFromTemperatureUv(wire, reader.coldJunctionC);
  const headUv = headC === null ? coldUv : emfFromTemperatureUv(wire, headC);
  // Reversed at both ends, the stretch from head to reader counts backwards: once lost and once taken away.
  return sign * (emfFromTemperatureUv(wire, junctionC) - headUv - (headUv - coldUv));
}

function sensitivityUvPerC(type: ThermocoupleType, temperatureC: number): number {
  return emfFromTemperatureUv(type, temperatureC + 0.5) - emfFromTemperatureUv(type, temperatureC - 0.5);
}

/** What the reader makes of the emf at its terminals; where it cannot be a temperature, a fault word. */
function sentValue(emfUv: number, { reader }: Scenario): ChannelValue {
  const coldJunctionC = toStep(reader.coldJunctionC, COLD_JUNCTION_STEP_C);
  if (reader.sends === 'emf') return { kind: 'emf', emfUv: toStep(emfUv, EMF_STEP_UV), coldJunctionC };
  const value = readingFromEmf(reader.thermocoupleType, emfUv, reader.coldJunctionC);
  if (value.kind !== 'temperature') return value;
  return { kind: 'temperature', temperatureC: toStep(value.temperatureC, reader.stepC) };
}

function toStep(value: number, step: number): number {
  // + 0 turns −0 into 0, which a reader would not print.
  return step <= 0 ? value : Math.round(value / step) * step + 0;
}
