import type { ProbeCorrection } from '../probe/probe-correction.ts';
import { createReadingAssembler } from '../reading/create-reading-assembler.ts';
import type { WireCounts } from '../reading/StreamEvent.ts';
import type { ChannelRole, RecordingEntry } from '../recording/RecordingEntry.ts';
import type { LineDecoder } from '../wire/WireEvent.ts';
import { HEATERS_ON, HEATERS_ON_TAKEN_BACK } from './heaters-notes.ts';
import type { Closing } from './WarmUp.ts';

/** One channel as it was read, s and °C; faults and missing values left out. */
export interface ChannelRecord {
  readonly channel: number;
  readonly role: ChannelRole;
  readonly timesS: readonly number[];
  readonly valuesC: readonly number[];
  readonly faults: number;
}

export interface PlatenRecord {
  readonly channels: readonly ChannelRecord[];
  readonly closings: readonly Closing[];
  /** Times of the notes that say the heaters were switched on, those taken back left out. */
  readonly heatersOnS: readonly number[];
  readonly gaps: readonly { readonly fromS: number; readonly toS: number }[];
  readonly endedS: number;
  readonly counts: WireCounts;
  readonly recognised: string | null;
  readonly refusal: { readonly problem: string; readonly detail: string } | null;
}

/**
 * Sends a recording through the reading assembler and keeps every channel that `wanted` accepts, each reading corrected by its
 * probe's calibration where there is one (`corrections`, channel 1 first).
 */
export function gatherPlatens(
  entries: Iterable<RecordingEntry>,
  decoder: LineDecoder,
  roles: readonly ChannelRole[],
  wanted: (role: ChannelRole) => boolean = isPlaten,
  corrections: readonly (ProbeCorrection | null)[] = [],
): PlatenRecord {
  const assembler = createReadingAssembler({ decoder });
  const channels = roles.flatMap((role, index) =>
    wanted(role)
      ? [{ index, channel: index + 1, role, timesS: [] as number[], valuesC: [] as number[], faults: 0 }]
      : [],
  );
  const closings: Closing[] = [];
  const gaps: { fromS: number; toS: number }[] = [];
  const heatersOnS: number[] = [];
  const take = (event: ReturnType<typeof assembler.accept>[number]): void => {
    if (event.kind === 'reading') {
      const { timeS, values } = event.reading;
      for (const channel of channels) {
        const value = values[channel.index];
        if (value?.kind === 'temperature' && Number.isFinite(value.temperatureC)) {
          channel.timesS.push(timeS);
          channel.valuesC.push(corrections[channel.index]?.(value.temperatureC) ?? value.temperatureC);
        } else if (value?.kind === 'fault') channel.faults += 1;
      }
    } else if (event.kind === 'gap') gaps.push({ fromS: event.fromS, toS: event.toS });
    else if (event.kind === 'contact' && event.closed) closings.push({ timeS: event.timeS, by: 'contact' });
    else if (event.kind === 'mark' && event.mark.kind === 'press-closed')
      closings.push({ timeS: event.timeS, by: 'mark' });
    else if (event.kind === 'mark' && event.mark.kind === 'undo' && event.mark.what === 'press-closed') {
      const latest = closings.findLastIndex((one) => one.by === 'mark');
      if (latest >= 0) closings.splice(latest, 1);
    } else if (event.kind === 'mark' && event.mark.kind === 'note') {
      if (HEATERS_ON.test(event.mark.text)) heatersOnS.push(event.timeS);
      else if (HEATERS_ON_TAKEN_BACK.test(event.mark.text)) heatersOnS.pop();
    }
  };
  for (const entry of entries) for (const event of assembler.accept(entry)) take(event);
  for (const event of assembler.finish()) take(event);
  return {
    channels: channels.map(({ index: _, ...channel }) => channel),
    closings,
    heatersOnS,
    gaps,
    endedS: assembler.latestReading?.timeS ?? 0,
    counts: assembler.counts,
    recognised: assembler.recognised,
    refusal: assembler.refusal,
  };
}

export function isPlaten(role: ChannelRole): boolean {
  return role === 'upper-platen' || role === 'lower-platen';
}
