import * as v from 'valibot';
import { recordingRefusals } from '../text/recording-refusals.ts';
import type { RecordingHead, SimulationTruth } from './RecordingEntry.ts';
import { RecordingError } from './RecordingError.ts';
import { HEAD_KEY, KNOWN_HEAD_KEYS, recordingHeadSchema } from './recording-head-schema.ts';
import { unescapeText } from './unescape-text.ts';

type Known = v.InferOutput<typeof recordingHeadSchema>;

/**
 * Head of a recording from its `key: value` lines (first line and `begin` left out).
 * Throws a RecordingError that names the key which is missing, twice there, or holds what it may not.
 */
export function parseRecordingHead(lines: readonly string[]): RecordingHead {
  const values: Record<string, string> = Object.create(null);
  for (const line of lines) {
    const colon = line.indexOf(':');
    const key = line.slice(0, Math.max(colon, 0)).trim();
    const value = unescapeText(line.slice(colon + 1).trim());
    if (!HEAD_KEY.test(key)) throw wrong(line.slice(0, 40), 'a line "key: value"', `"${line.slice(0, 60)}"`);
    if (value === null) throw wrong(key, 'known escapes after each backslash', `"${line.slice(0, 60)}"`);
    if (key in values) throw wrong(key, 'it once', 'it twice');
    values[key] = value;
  }
  return headFrom(values);
}

function headFrom(values: Record<string, string>): RecordingHead {
  const checked = v.safeParse(recordingHeadSchema, values, { abortEarly: true });
  if (!checked.success) {
    const issue = checked.issues[0];
    const key = String(issue.path?.[0]?.key ?? 'head');
    const came = values[key];
    throw wrong(key, issue.expected ?? issue.message, came === undefined ? 'no such line' : `"${came}"`);
  }
  const known = checked.output;
  const upper = known['upper-platen-set-point-c'];
  const lower = known['lower-platen-set-point-c'];
  if ((upper === undefined) !== (lower === undefined)) {
    throw wrong('upper-platen-set-point-c', 'the set points of both platens', 'one of them');
  }
  const truth = truthFrom(known);
  return {
    recordingId: known['recording-id'],
    madeAt: known['made-at'],
    program: known.program,
    roles: known.roles,
    simulated: known.simulated,
    ...given('pressName', known.press),
    ...given('assemblyName', known.assembly),
    ...given('trialId', known.trial),
    ...given('operatorInitials', known.operator),
    ...given('targetC', known['target-c']),
    ...given('holdS', known['hold-s']),
    ...given('platenSetPointC', upper === undefined || lower === undefined ? undefined : { upper, lower }),
    ...given('portPath', known.port),
    ...given('statedUnit', known['stated-unit']),
    ...given('truth', truth),
    further: Object.fromEntries(Object.entries(values).filter(([key]) => !KNOWN_HEAD_KEYS.has(key))),
  };
}

function truthFrom(known: Known): SimulationTruth | undefined {
  const seed = known['truth-seed'];
  if (seed === undefined) return undefined;
  return {
    seed,
    pressClosedS: known['truth-press-closed-s'] ?? null,
    bondLineCrossingS: known['truth-bond-line-crossing-s'] ?? null,
    probeCrossingS: known['truth-probe-crossing-s'] ?? null,
    openedS: known['truth-opened-s'] ?? null,
    failure: known['truth-failure'] ?? 'none',
  };
}

function given<K extends string, T>(key: K, value: T | undefined): { readonly [P in K]?: T } {
  return (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: T };
}

function wrong(key: string, expected: string, came: string): RecordingError {
  return new RecordingError('recording-head-wrong', ...recordingRefusals.headWrong(key, expected, came));
}
