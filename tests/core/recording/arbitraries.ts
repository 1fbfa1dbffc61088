import fc from 'fast-check';
import type { OperatorMark, RunConditions } from '../../../src/core/reading/StreamEvent.ts';
import type { RecordingEntry, RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';

/** Any bytes, as a wire line holds them: one character per byte, no line feed (it ends the line). */
export const wireText = fc
  .array(fc.oneof(fc.integer({ min: 0, max: 255 }), fc.constantFrom(0x5c, 0x20, 0x0d, 0x09, 0x78)), {
    maxLength: 40,
  })
  .map((bytes) =>
    bytes
      .filter((byte) => byte !== 0x0a)
      .map((byte) => String.fromCharCode(byte))
      .join(''),
  );

/** Any text a person or program may give, lone surrogates and controls among it. */
export const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 20 }),
  fc
    .array(
      fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit)),
      { maxLength: 12 },
    )
    .map((units) => units.join('')),
  fc.constantFrom(
    '',
    ' ',
    '\\',
    '\\x41',
    '\n',
    'end 0 sha256 x',
    'probe slipped',
    'Öl an der Sonde',
    '\u202e',
    '\ud800',
  ),
);

const conditions: fc.Arbitrary<RunConditions> = fc.record({
  ring: fc.constantFrom('fresh', 're-used', null),
  coating: fc.constantFrom('coated', 'bare', null),
  carrierId: fc.option(anyText, { nil: null }),
  probe: fc.constantFrom('re-laid', 'left', null),
});

const mark: fc.Arbitrary<OperatorMark> = fc.oneof(
  fc.constant<OperatorMark>({ kind: 'press-closed' }),
  fc.constant<OperatorMark>({ kind: 'opened' }),
  anyText.map((reason): OperatorMark => ({ kind: 'spoilt', reason })),
  anyText.map((text): OperatorMark => ({ kind: 'note', text })),
  fc.constantFrom('press-closed', 'opened', 'spoilt').map((what): OperatorMark => ({ kind: 'undo', what })),
  conditions.map((value): OperatorMark => ({ kind: 'conditions', conditions: value })),
);

const arrivedUs = fc.oneof(
  fc.nat({ max: 3_600_000_000 }),
  fc.constantFrom(0, 1, 999_999, 1_000_000, 2 ** 45),
);

export const anyEntry: fc.Arbitrary<RecordingEntry> = fc.oneof(
  fc.record({
    kind: fc.constant('line' as const),
    arrivedUs,
    text: wireText,
    wholeness: fc.constantFrom('whole', 'start-unknown', 'cut-off', 'over-long'),
  }),
  fc.record({
    kind: fc.constant('mark' as const),
    arrivedUs,
    by: fc.constantFrom('key', 'pedal', 'command'),
    mark,
  }),
  fc.record({
    kind: fc.constant('host' as const),
    arrivedUs,
    event: fc.constantFrom('port-lost', 'port-back', 'host-slept', 'recording-resumed'),
    detail: anyText,
  }),
);

const figure = fc
  .double({ noNaN: true, noDefaultInfinity: true })
  .map((value) => (Object.is(value, -0) ? 0 : value));
const notEmpty = anyText.filter((text) => text !== '');

const time = fc.option(figure, { nil: null });

export const anyHead: fc.Arbitrary<RecordingHead> = fc.record(
  {
    recordingId: notEmpty,
    madeAt: fc.constantFrom('2026-03-02T08:15:00+01:00', '2026-03-02T07:15:00.125Z'),
    program: notEmpty,
    roles: fc.array(
      fc.constantFrom(
        'bond-line',
        'bond-line-inner',
        'bond-line-outer',
        'upper-platen',
        'lower-platen',
        'ambient',
        'unused',
      ),
      { maxLength: 5 },
    ),
    simulated: fc.boolean(),
    pressName: anyText,
    assemblyName: anyText,
    trialId: anyText,
    operatorInitials: anyText,
    targetC: figure,
    holdS: figure,
    platenSetPointC: fc.record({ upper: figure, lower: figure }),
    portPath: anyText,
    statedUnit: fc.constantFrom('C', 'F', 'K'),
    truth: fc.record({
      seed: fc.nat(),
      pressClosedS: time,
      bondLineCrossingS: time,
      probeCrossingS: time,
      openedS: time,
      failure: notEmpty,
    }),
    further: fc.dictionary(fc.stringMatching(/^zz[a-z0-9-]{0,8}$/), anyText, {
      maxKeys: 3,
      noNullPrototype: true,
    }),
  },
  {
    requiredKeys: ['recordingId', 'madeAt', 'program', 'roles', 'simulated', 'further'],
    noNullPrototype: true,
  },
);
