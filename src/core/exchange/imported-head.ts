import { cureHeadLines, HIGHEST_PEAK_KEY } from '../cure/head-cure.ts';
import type { LoggerLayout } from '../logger-file/LoggerLayout.ts';
import { probeHeadLines } from '../probe/head-probes.ts';
import type { Probe } from '../probe/Probe.ts';
import { probeRecord } from '../probe/probe-record.ts';
import { createSha256Hasher } from '../recording/create-sha256-hasher.ts';
import { AMBIENT_KEY } from '../recording/head-ambient.ts';
import { CLOSED_AT_KEY } from '../recording/head-closed-at.ts';
import { DIP_KEY } from '../recording/head-dip.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import type { RunRules } from '../run/RunResult.ts';
import { exchangeRefusals } from '../text/exchange-text.ts';
import { ExchangeError } from './ExchangeError.ts';
import { LAYOUT_KEY } from './head-layout.ts';

/** Key under which the head of an imported recording keeps the SHA-256 of its file. */
export const FILE_HASH_KEY = 'imported-sha256';

/** Key under which it keeps the SHA-256 of what the file says, however its lines end. */
export const CONTENT_HASH_KEY = 'imported-content-sha256';

/** A layout longer than this does not fit into one line of a recording's head. */
const LONGEST_LAYOUT = 200_000;

export interface ImportedHeadParts {
  readonly fileName: string;
  readonly fileSha256: string;
  /** See `contentSha256`. */
  readonly contentSha256: string;
  /** When the file was last written; a label only. */
  readonly fileWrittenAt: string;
  readonly program: string;
  readonly layout: LoggerLayout;
  readonly rules: RunRules;
  /** Probe on each channel, channel 1 first; empty where none is stated. */
  readonly probes: readonly (Probe | null)[];
  readonly trialId: string;
  readonly assemblyName: string;
  readonly pressName: string;
}

/** How a logger's file is read, as one text: two imports of the same bytes with the same text are the same. */
export function readAsText(layout: LoggerLayout, rules: RunRules, probes: readonly (Probe | null)[]): string {
  const {
    targetC,
    holdS,
    dip,
    platenSetPointC,
    ambientC,
    closedAtS,
    cure = null,
    highestPeakC = null,
  } = rules;
  return JSON.stringify({
    layout,
    targetC,
    holdS,
    dip,
    platenSetPointC,
    ambientC,
    closedAtS,
    cure,
    highestPeakC,
    ...(probes.some((probe) => probe !== null) ? { probes: probes.map(recordOf) } : {}),
  });
}

const recordOf = (probe: Probe | null): string | null => (probe === null ? null : probeRecord(probe));

/**
 * Head under which a logger's file becomes a recording: everything that its replay needs. The id follows from the
 * bytes, how they are read and the trial, so the same file brought in on two laptops is one recording.
 */
export function importedHead(parts: ImportedHeadParts): RecordingHead {
  const { layout, rules } = parts;
  const layoutText = JSON.stringify(layout);
  if (layoutText.length > LONGEST_LAYOUT)
    throw new ExchangeError('import-too-wide', exchangeRefusals.headingsTooLong(parts.fileName));
  return {
    recordingId: importedId(parts),
    madeAt: parts.fileWrittenAt,
    program: parts.program,
    roles: layout.temperatures.map((one) => one.role),
    simulated: false,
    pressName: parts.pressName,
    assemblyName: parts.assemblyName,
    trialId: parts.trialId,
    targetC: rules.targetC,
    holdS: rules.holdS,
    ...(rules.platenSetPointC === null ? {} : { platenSetPointC: rules.platenSetPointC }),
    further: {
      [DIP_KEY]: rules.dip,
      ...(rules.ambientC === null ? {} : { [AMBIENT_KEY]: String(rules.ambientC) }),
      ...(rules.closedAtS === null ? {} : { [CLOSED_AT_KEY]: String(rules.closedAtS) }),
      ...(rules.highestPeakC == null ? {} : { [HIGHEST_PEAK_KEY]: String(rules.highestPeakC) }),
      ...cureHeadLines(rules.cure),
      ...probeHeadLines(parts.probes),
      'imported-from': parts.fileName,
      [FILE_HASH_KEY]: parts.fileSha256,
      [CONTENT_HASH_KEY]: parts.contentSha256,
      [LAYOUT_KEY]: layoutText,
    },
  };
}

function importedId({ fileSha256, layout, rules, probes, trialId }: ImportedHeadParts): string {
  const hasher = createSha256Hasher();
  hasher.update(`${fileSha256}\n${readAsText(layout, rules, probes)}\n${trialId}`);
  return `import-${hasher.digestHex().slice(0, 32)}`;
}
