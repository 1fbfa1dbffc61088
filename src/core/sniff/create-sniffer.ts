import { createReadingAssembler } from '../reading/create-reading-assembler.ts';
import type { StreamEvent } from '../reading/StreamEvent.ts';
import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import type { LineDecoder, ThermocoupleType } from '../wire/WireEvent.ts';
import { type ChannelStatistics, createChannelStatistics } from './create-channel-statistics.ts';
import type { SniffReport } from './SniffReport.ts';

const EXAMPLES = 5;
/** Channels looked at; a line of more numbers than this is no reader's. */
const MOST_CHANNELS = 64;

export interface Sniffer {
  /** Next entry, in order of arrival. Never throws. */
  accept(entry: RecordingEntry): readonly StreamEvent[];
  /** What is known so far. */
  readonly report: SniffReport;
}

/** Listens to a reader, live or recorded, and tells what it is and how well it works. Constant memory. */
export function createSniffer(options: {
  readonly decoder: LineDecoder;
  readonly thermocoupleTypes?: readonly (ThermocoupleType | null)[];
}): Sniffer {
  const assembler = createReadingAssembler(options);
  const channels: ChannelStatistics[] = [];
  const examples: string[] = [];
  let firstArrivedUs: number | null = null;
  let latestArrivedUs = 0;
  let latestS: number | null = null;
  let afterGap = false;
  let steps = 0;
  let stepsS = 0;

  const look = (event: StreamEvent): void => {
    if (event.kind === 'gap') afterGap = true;
    else if (event.kind === 'trouble') {
      // Half lines at either end of a connection are as they should be.
      const half = event.trouble === 'start-unknown' || event.trouble === 'cut-off';
      if (!half && examples.length < EXAMPLES) examples.push(event.text);
    } else if (event.kind === 'reading') {
      const { timeS, values } = event.reading;
      const neighbour = latestS !== null && !afterGap;
      if (neighbour) {
        steps += 1;
        stepsS += timeS - (latestS as number);
      }
      for (let i = 0; i < values.length && i < MOST_CHANNELS; i += 1) {
        channels[i] ??= createChannelStatistics();
        const value = values[i];
        if (value !== undefined) (channels[i] as ChannelStatistics).add(value, neighbour);
      }
      latestS = timeS;
      afterGap = false;
    }
  };

  return {
    accept(entry) {
      firstArrivedUs ??= entry.arrivedUs;
      latestArrivedUs = Math.max(latestArrivedUs, entry.arrivedUs);
      const events = assembler.accept(entry);
      for (const event of events) look(event);
      return events;
    },
    get report() {
      const { identity } = assembler;
      return Object.freeze({
        recognised: assembler.recognised,
        refusal: assembler.refusal,
        identity,
        channels: channels.map((channel, index) => {
          const told = identity?.channels.find((one) => one.number === index + 1);
          return Object.freeze({
            number: index + 1,
            name: told?.name ?? null,
            thermocoupleType: told?.thermocoupleType ?? null,
            ...channel.report,
            // A ramp shows larger steps than the reader's own; what it states goes before.
            ...(told?.resolutionC == null || channel.report.stepC === null
              ? {}
              : { stepC: told.resolutionC }),
          });
        }),
        listenedS: firstArrivedUs === null ? 0 : (latestArrivedUs - firstArrivedUs) / 1e6,
        rateHz: steps === 0 || stepsS <= 0 ? null : steps / stepsS,
        counts: Object.freeze({ ...assembler.counts }),
        clock: assembler.clock,
        examples: Object.freeze([...examples]),
      });
    },
  };
}
