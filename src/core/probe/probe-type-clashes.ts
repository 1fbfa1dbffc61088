import type { ReaderIdentity, ThermocoupleType } from '../wire/WireEvent.ts';
import type { Probe } from './Probe.ts';

export interface ProbeTypeClash {
  readonly channel: number;
  readonly probeName: string;
  readonly probeType: ThermocoupleType;
  readonly readerType: ThermocoupleType;
}

/** Channels whose reader says that it is set to another thermocouple type than the probe's: every reading is wrong. */
export function probeTypeClashes(
  probes: readonly (Probe | null)[],
  identity: Pick<ReaderIdentity, 'channels'> | null,
): readonly ProbeTypeClash[] {
  return probes.flatMap((probe, at) => {
    const readerType = identity?.channels.find(({ number }) => number === at + 1)?.thermocoupleType ?? null;
    if (probe === null || readerType === null || readerType === probe.thermocoupleType) return [];
    return [{ channel: at + 1, probeName: probe.name, probeType: probe.thermocoupleType, readerType }];
  });
}
