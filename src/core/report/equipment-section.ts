import type { Probe } from '../probe/Probe.ts';
import { neutralise } from '../text/neutralise.ts';
import { probeLines } from '../text/probe-text.ts';
import { REPORT_TEXT, ROLE_NAME } from '../text/report-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import type { FactsBlock, ReportSection } from './ReportContent.ts';
import type { ReportRecording } from './TrialReportInput.ts';

type Traced = Pick<ReportRecording, 'trace'>;

export interface EquipmentInput {
  readonly recordings: readonly Traced[];
  readonly probes: readonly Probe[];
  /** As stated by people. */
  readonly equipment: readonly string[];
  /** Where the probes' records are read, °C. */
  readonly targetC: number;
  readonly unit: TemperatureUnit;
}

/** What it was measured with: reader and channels as the recordings say, the rest as people state it, dates to fill in. */
export function equipmentSection({
  recordings,
  probes,
  equipment,
  targetC,
  unit,
}: EquipmentInput): ReportSection {
  const readers = distinct(recordings.flatMap(readerText));
  const channels = distinct(recordings.flatMap(channelTexts));
  return {
    heading: REPORT_TEXT.equipmentHeading,
    blocks: [
      {
        kind: 'facts',
        facts: [
          ...(readers.length === 0
            ? [{ name: REPORT_TEXT.reader, value: '' }]
            : readers.map((value) => ({ name: REPORT_TEXT.reader, value }))),
          ...channels.map((value) => ({ name: REPORT_TEXT.probeLaid, value })),
          ...probeFacts({ probes, equipment, atC: targetC, unit }),
        ],
      },
      { kind: 'paragraphs', lines: [REPORT_TEXT.clock(distinct(recordings.flatMap(clockText)))] },
    ],
  };
}

/** Probes with their calibration at a temperature, and equipment as stated; without any, lines to write on. */
function probeFacts({ probes, equipment, atC, unit }: ProbesInput): FactsBlock['facts'] {
  return [
    ...probes.map((probe) => ({
      name: REPORT_TEXT.probeRecord,
      value: probeLines(probe, atC, unit)
        .map((line) => line.trim())
        .join('; '),
    })),
    ...(equipment.length > 0
      ? equipment.map((item) => ({
          name: REPORT_TEXT.equipmentItem,
          value: neutralise(item, { longest: 500 }),
        }))
      : REPORT_TEXT.calibrationBlanks.map((name) => ({ name, value: '' }))),
  ];
}

export interface ProbesInput {
  readonly probes: readonly Probe[];
  readonly equipment: readonly string[];
  /** Where the probes' records are read, °C. */
  readonly atC: number;
  readonly unit: TemperatureUnit;
}

/** Equipment of a report whose recordings tell nothing further of the reader. */
export function probesSection(input: ProbesInput): ReportSection {
  return {
    heading: REPORT_TEXT.equipmentHeading,
    blocks: [{ kind: 'facts', facts: probeFacts(input) }],
  };
}

function readerText({ trace }: Traced): readonly string[] {
  const { identity, recognised } = trace;
  if (identity === null) return recognised === null ? [] : [neutralise(recognised)];
  const { name, firmwareVersion, serialNumber, rateHz } = identity;
  return [
    REPORT_TEXT.readerOf(
      neutralise(name ?? REPORT_TEXT.notStated),
      neutralise(serialNumber ?? REPORT_TEXT.notStated),
      neutralise(firmwareVersion ?? REPORT_TEXT.notStated),
      rateHz == null ? null : numberText(rateHz, 0),
    ),
  ];
}

function channelTexts({ trace }: Traced): readonly string[] {
  return trace.channels
    .filter(({ role }) => role !== 'unused')
    .map(({ channel, role }) => {
      const identity = trace.identity?.channels.find(({ number }) => number === channel);
      return REPORT_TEXT.channelOf(
        channel,
        ROLE_NAME[role],
        identity?.thermocoupleType ?? null,
        identity?.resolutionC ?? null,
      );
    });
}

function clockText({ trace }: Traced): readonly string[] {
  const { driftPpm, standardUncertaintyPpm } = trace.clock;
  return driftPpm === null
    ? []
    : [REPORT_TEXT.drift(numberText(driftPpm, 0), numberText(standardUncertaintyPpm, 0))];
}

const distinct = (texts: readonly string[]): readonly string[] => [...new Set(texts)];
