import { createPlainDecoder } from '../../../../src/core/wire/plain/create-plain-decoder.ts';
import { bytesFromText } from '../../../../src/core/wire/plain/text-from-bytes.ts';
import type { LineDecoder, SampleEvent, WireEvent } from '../../../../src/core/wire/WireEvent.ts';

/** Feeds whole lines, 100 ms apart, as UTF-8 bytes. */
export function decodeAll(
  lines: readonly string[],
  options: {
    readonly statedUnit?: 'C' | 'F' | 'K';
    readonly decoder?: LineDecoder;
    readonly stepUs?: number;
  } = {},
): {
  readonly decoder: LineDecoder;
  readonly events: readonly WireEvent[];
  readonly perLine: readonly (readonly WireEvent[])[];
} {
  const decoder =
    options.decoder ?? createPlainDecoder(options.statedUnit ? { statedUnit: options.statedUnit } : {});
  const perLine = lines.map((line, at) =>
    decoder.decode(
      Object.freeze({
        arrivedUs: at * (options.stepUs ?? 100_000),
        text: bytesFromText(line),
        wholeness: 'whole' as const,
      }),
    ),
  );
  return { decoder, events: perLine.flat(), perLine };
}

export function samples(events: readonly WireEvent[]): readonly SampleEvent[] {
  return events.filter((event) => event.kind === 'sample');
}

/** °C of each channel, rounded to 1e-6 against float dust; the fault's or gap's kind where there is none. */
export function shown(event: SampleEvent): readonly (number | string)[] {
  return event.channels.map((value) =>
    value.kind === 'temperature'
      ? Math.round(value.temperatureC * 1e6) / 1e6
      : value.kind === 'fault'
        ? value.fault
        : value.kind,
  );
}
