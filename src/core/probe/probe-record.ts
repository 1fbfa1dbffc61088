import * as v from 'valibot';
import { checkProbe } from './check-probe.ts';
import type { Probe } from './Probe.ts';
import { ProbeError } from './ProbeError.ts';

const figure = v.pipe(v.number(), v.finite());

/** What a stored or recorded probe must look like. */
export const probeSchema = v.object({
  name: v.pipe(v.string(), v.minLength(1)),
  thermocoupleType: v.picklist(['K', 'J', 'T', 'E', 'N', 'R', 'S', 'B']),
  toleranceClass: v.nullable(
    v.picklist(['astm-standard', 'astm-special', 'iec-class-1', 'iec-class-2', 'iec-class-3']),
  ),
  points: v.array(
    v.object({
      temperatureC: figure,
      errorC: figure,
      standardUncertaintyC: figure,
      calibratedOn: v.nullable(v.string()),
    }),
  ),
  readerIncluded: v.boolean(),
  headC: v.nullable(figure),
  readerC: v.nullable(figure),
});

/** A probe as one line of text that a recording's head can hold. */
export function probeRecord(probe: Probe): string {
  return JSON.stringify(probe);
}

/** The probe of such a line; refuses what is none. */
export function readProbeRecord(text: string, where: string): Probe {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw unreadable(where, 'it is no JSON');
  }
  const checked = v.safeParse(probeSchema, value, { abortEarly: true });
  if (!checked.success)
    throw unreadable(where, `${v.getDotPath(checked.issues[0]) ?? 'it'}: ${checked.issues[0].message}`);
  return checkProbe(checked.output);
}

function unreadable(where: string, why: string): ProbeError {
  return new ProbeError(
    'probe-record-unreadable',
    `${where}: the probe's record cannot be read: ${why}`,
    'Replay with --probes to say which probe it was, or --probes - for none',
  );
}
