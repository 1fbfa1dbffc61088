import type { ChannelValue, SampleEvent, WireEvent } from '../WireEvent.ts';
import { createDigitWatch } from './create-digit-watch.ts';
import { isFaultValue, isKnownFaultValue } from './fault-value.ts';
import type { PlainContent, PlainField, PlainValues } from './PlainField.ts';
import type { LearntLine, PlainColumn, PlainLayout } from './PlainLayout.ts';
import { celsiusFrom } from './temperature-unit.ts';

/** No temperature has more digits before the decimal sign; two numbers run into one do. */
const MOST_INTEGER_DIGITS = 5;

export interface PlainSampler {
  readonly identity: WireEvent;
  /** The sample that a fitting line holds; undefined if a value in it is not whole. */
  sample(values: PlainValues): SampleEvent | undefined;
  /** Whether the line's clock or count is behind the last sample's. */
  runsBack(values: PlainValues): boolean;
}

type TemperatureColumn = Extract<PlainColumn, { kind: 'temperature' }>;

function numberAt(values: PlainValues, at: number): number | null {
  const content = values.fields[at]?.content;
  return content?.kind === 'number' ? content.value : null;
}

/** Makes samples from lines that fit a layout whose units are all known. Watches the digits of every temperature. */
export function createPlainSampler(layout: PlainLayout, learnt: readonly LearntLine[]): PlainSampler {
  const clockAt = layout.columns.findIndex((column) => column.kind === 'clock');
  const clock = layout.columns[clockAt];
  const tickUs = clock?.kind === 'clock' ? clock.tickUs : 1;
  const decimalsVary = layout.separator === 'json';
  const sequenceAt = layout.columns.findIndex((column) => column.kind === 'sequence');
  const temperatures = layout.columns.flatMap((column, at) =>
    column.kind === 'temperature'
      ? [{ column, at, whole: createDigitWatch(contents(learnt.slice(0, -1), at, column), { decimalsVary }) }]
      : [],
  );
  let last: SampleEvent | null = null;

  function counters(values: PlainValues): Pick<SampleEvent, 'sequence' | 'deviceTimeUs'> {
    const ticks = numberAt(values, clockAt);
    const sequence = numberAt(values, sequenceAt);
    return {
      sequence: sequence !== null && Number.isInteger(sequence) ? sequence : null,
      deviceTimeUs: ticks === null ? null : Math.round(ticks * tickUs),
    };
  }

  return {
    identity: identityOf(temperatures.map(({ column }) => column)),
    sample(values) {
      const channels: ChannelValue[] = [];
      let whole = true;
      for (const { column, at, whole: isWhole } of temperatures) {
        const value = channelValue(values.fields[at], column, isWhole);
        if (value) channels.push(value);
        else whole = false;
      }
      const times = counters(values);
      if (
        !whole ||
        (clockAt >= 0 && times.deviceTimeUs === null) ||
        (sequenceAt >= 0 && times.sequence === null)
      ) {
        return undefined;
      }
      last = Object.freeze({ kind: 'sample', ...times, channels: Object.freeze(channels) });
      return last;
    },
    runsBack(values) {
      const now = counters(values);
      return (
        (now.sequence !== null && last?.sequence != null && now.sequence < last.sequence) ||
        (now.deviceTimeUs !== null && last?.deviceTimeUs != null && now.deviceTimeUs < last.deviceTimeUs)
      );
    },
  };
}

function contents(
  learnt: readonly LearntLine[],
  at: number,
  column: TemperatureColumn,
): readonly PlainContent[] {
  const unit = column.unit;
  return learnt.flatMap((line) => {
    const content = line.values.fields[at]?.content;
    return content && unit && !(content.kind === 'number' && isFaultValue(content.value, unit))
      ? [content]
      : [];
  });
}

/** Undefined where the value is not whole: digits missing or too many, or the unit that the layout prints is not there. */
function channelValue(
  field: PlainField | undefined,
  column: TemperatureColumn,
  isWhole: (content: PlainContent) => boolean,
): ChannelValue | undefined {
  const unit = field?.unit ?? column.unit;
  if (!field || !unit || field.otherUnit) return undefined;
  const { content } = field;
  if (content.kind === 'fault') return { kind: 'fault', fault: content.fault };
  if (content.kind === 'empty') return { kind: 'missing' };
  if (content.kind === 'stamp') return undefined;
  if (isKnownFaultValue(content.value, unit)) return { kind: 'fault', fault: 'unspecified' };
  if (column.printsUnit && !field.unit) return undefined;
  if (content.integerDigits > MOST_INTEGER_DIGITS) return undefined;
  if (isFaultValue(content.value, unit)) return { kind: 'fault', fault: 'unspecified' };
  return isWhole(content)
    ? { kind: 'temperature', temperatureC: celsiusFrom(content.value, unit) }
    : undefined;
}

function identityOf(columns: readonly TemperatureColumn[]): WireEvent {
  return {
    kind: 'identity',
    identity: {
      name: null,
      firmwareVersion: null,
      serialNumber: null,
      channels: columns.map((column, at) => ({
        number: at + 1,
        name: column.name,
        thermocoupleType: null,
        sends: 'temperature',
        resolutionC: null,
      })),
      ratesHz: [],
      hasContact: false,
    },
  };
}
