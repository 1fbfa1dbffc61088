import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { PlatenRecord } from '../warm-up/gather-platens.ts';
import type { PowerOn } from '../warm-up/WarmUp.ts';
import { withoutSpikes } from '../warm-up/without-spikes.ts';

/** A line of an overlay chart: means over even steps, time from power-on. A step without a reading holds no point. */
export interface AlignedSeries {
  /** Recording it comes from. */
  readonly source: string;
  readonly side: 'first' | 'second';
  readonly role: ChannelRole;
  readonly stepS: number;
  readonly points: readonly { readonly timeS: number; readonly temperatureC: number }[];
}

/** The platen channels of a recording as chart lines aligned at power-on, averaged over `stepS`. Spikes left out. */
export function alignedSeries(
  source: string,
  side: 'first' | 'second',
  record: PlatenRecord,
  powerOn: PowerOn,
  stepS = 10,
): readonly AlignedSeries[] {
  return record.channels.map((channel) => {
    const { samples } = withoutSpikes({
      timesS: Float64Array.from(channel.timesS),
      valuesC: Float64Array.from(channel.valuesC),
    });
    const steps = new Map<number, { sum: number; count: number }>();
    samples.timesS.forEach((timeS, i) => {
      const step = Math.floor((timeS - powerOn.timeS) / stepS);
      const seen = steps.get(step) ?? { sum: 0, count: 0 };
      steps.set(step, { sum: seen.sum + samples.valuesC[i]!, count: seen.count + 1 });
    });
    return {
      source,
      side,
      role: channel.role,
      stepS,
      points: [...steps].map(([step, { sum, count }]) => ({
        timeS: (step + 0.5) * stepS,
        temperatureC: sum / count,
      })),
    };
  });
}
