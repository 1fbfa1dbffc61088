import { compensatedTemperatureC } from '../thermocouple/compensated-temperature-c.ts';
import { emfFromTemperatureUv } from '../thermocouple/emf-from-temperature-uv.ts';
import { emfRangeUv } from '../thermocouple/emf-range-uv.ts';
import type { ChannelValue } from '../wire/WireEvent.ts';
import { createInterference } from './create-interference.ts';
import type { PressMoment } from './create-press-simulation.ts';
import type { RandomSource } from './create-random.ts';
import type { ChannelTrouble, Scenario } from './Scenario.ts';

/** Smallest steps of a reader that sends emf: 1 µV and 1/16 °C. */
const EMF_STEP_UV = 1;
const COLD_JUNCTION_STEP_C = 0.0625;
/** What a converter shows when its input floats to the rail. */
const FULL_SCALE_C = 1372;

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
        return sentValue(FULL_SCALE_C, scenario);
      }
    }
    const wireC = temperatureAtReader(probeC, moment, troubles, scenario);
    return sentValue(wireC + noiseC, scenario);
  }

  return { read };
}

/** What the reader works out from the emf that reaches it, with its own idea of the wire; °C, before noise. */
function temperatureAtReader(
  probeC: number,
  moment: PressMoment,
  troubles: readonly ChannelTrouble[],
  scenario: Scenario,
): number {
  const { thermocoupleType: type, coldJunctionC } = scenario.reader;
  let junctionC = probeC;
  let wire = type;
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
  const junctionUv = emfFromTemperatureUv(wire, junctionC);
  const coldUv = emfFromTemperatureUv(wire, coldJunctionC);
  // Reversed at both ends: the stretch from head to reader counts backwards, once lost and once taken away.
  const headUv = headC === null ? coldUv : emfFromTemperatureUv(wire, headC);
  const emfUv = sign * (junctionUv - headUv - (headUv - coldUv));
  const range = emfRangeUv(type);
  const ownColdUv = emfFromTemperatureUv(type, coldJunctionC);
  const clamped = Math.min(range.highest, Math.max(range.lowest, emfUv + ownColdUv));
  return compensatedTemperatureC(type, clamped - ownColdUv, coldJunctionC);
}

function sentValue(temperatureC: number, scenario: Scenario): ChannelValue {
  const { sends, stepC, thermocoupleType: type, coldJunctionC } = scenario.reader;
  if (sends === 'temperature') {
    return { kind: 'temperature', temperatureC: toStep(temperatureC, stepC) };
  }
  const emfUv = emfFromTemperatureUv(type, temperatureC) - emfFromTemperatureUv(type, coldJunctionC);
  return {
    kind: 'emf',
    emfUv: toStep(emfUv, EMF_STEP_UV),
    coldJunctionC: toStep(coldJunctionC, COLD_JUNCTION_STEP_C),
  };
}

function toStep(value: number, step: number): number {
  // + 0 turns −0 into 0, which a reader would not print.
  return step <= 0 ? value : Math.round(value / step) * step + 0;
}
