import * as v from 'valibot';
import { CHANNEL_ROLES } from './RecordingEntry.ts';

const figure = v.pipe(
  v.string(),
  v.regex(/^-?\d+(\.\d+)?(e[+-]?\d+)?$/, 'a plain number'),
  v.transform(Number),
  v.finite('a finite number'),
);
const timeOrNever = v.union([
  v.pipe(
    v.literal('never'),
    v.transform(() => null),
  ),
  figure,
]);
const word = v.pipe(v.string(), v.minLength(1, 'not empty'));
const role = v.picklist(CHANNEL_ROLES);

/** What the known keys of a recording's head may hold; values come as text. Lower-case keys, unit at the end. */
export const recordingHeadSchema = v.looseObject({
  'recording-id': word,
  'made-at': v.pipe(
    v.string(),
    v.isoTimestamp('a date and time with offset, like 2026-03-02T08:15:00+01:00'),
  ),
  program: word,
  simulated: v.pipe(
    v.picklist(['yes', 'no']),
    v.transform((answer) => answer === 'yes'),
  ),
  roles: v.pipe(
    v.string(),
    v.transform((list) => (list === '' ? [] : list.split(/\s*,\s*/))),
    v.array(role),
  ),
  press: v.optional(v.string()),
  assembly: v.optional(v.string()),
  trial: v.optional(v.string()),
  operator: v.optional(v.string()),
  'target-c': v.optional(figure),
  'hold-s': v.optional(figure),
  'upper-platen-set-point-c': v.optional(figure),
  'lower-platen-set-point-c': v.optional(figure),
  port: v.optional(v.string()),
  'stated-unit': v.optional(v.picklist(['C', 'F', 'K'])),
  'truth-seed': v.optional(figure),
  'truth-press-closed-s': v.optional(timeOrNever),
  'truth-bond-line-crossing-s': v.optional(timeOrNever),
  'truth-probe-crossing-s': v.optional(timeOrNever),
  'truth-opened-s': v.optional(timeOrNever),
  'truth-failure': v.optional(word),
});

/** Keys with a meaning; every other key of a head is kept as it stands. */
export const KNOWN_HEAD_KEYS: ReadonlySet<string> = new Set([
  'dwellwright-recording',
  ...Object.keys(recordingHeadSchema.entries),
]);

/** How a key of the head is written. */
export const HEAD_KEY = /^[a-z][a-z0-9-]*$/;
