import type { RecordingHead } from '../recording/RecordingEntry.ts';
import type { Probe } from './Probe.ts';
import { probeRecord, readProbeRecord } from './probe-record.ts';

/** Keys of a recording's head: the probe's name, for people, and its record as it was that day. */
const nameKey = (channel: number): string => `probe-${channel}`;
const recordKey = (channel: number): string => `probe-${channel}-record`;

/**
 * Head lines that say which probe is on which channel (channel 1 first; null = not stated), with each probe's record:
 * a replay anywhere then corrects as the press did, whatever became of the probe since.
 */
export function probeHeadLines(probes: readonly (Probe | null)[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    probes.flatMap((probe, at) =>
      probe === null
        ? []
        : [
            [nameKey(at + 1), probe.name],
            [recordKey(at + 1), probeRecord(probe)],
          ],
    ),
  );
}

/** Probes that a recording's head names, by channel; null where none is stated. Refuses a record that cannot be read. */
export function headProbes({
  further,
  roles,
}: Pick<RecordingHead, 'further' | 'roles'>): readonly (Probe | null)[] {
  return roles.map((_, at) => {
    const record = further[recordKey(at + 1)];
    return record === undefined
      ? null
      : readProbeRecord(record, `head of the recording, ${recordKey(at + 1)}`);
  });
}
