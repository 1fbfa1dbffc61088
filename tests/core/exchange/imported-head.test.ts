import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headLayout, LAYOUT_KEY } from '../../../src/core/exchange/head-layout.ts';
import { importedHead } from '../../../src/core/exchange/imported-head.ts';
import { openLoggerFile } from '../../../src/core/logger-file/open-logger-file.ts';
import { formatRecordingHead } from '../../../src/core/recording/format-recording-head.ts';
import { parseRecordingHead } from '../../../src/core/recording/parse-recording-head.ts';
import type { RunRules } from '../../../src/core/run/RunResult.ts';
import { anyText } from '../recording/arbitraries.ts';

const rules: RunRules = {
  targetC: 176.66666666666666,
  holdS: 120,
  longestDipS: 2,
  dip: 'pauses',
  platenSetPointC: { upper: 232.22222222222223, lower: 230 },
  ambientC: 23.88888888888889,
  warmCarrierLimitC: 15,
  closingDisagreementLimitS: 1,
  closedAtS: -1.25,
};
const { layout } = openLoggerFile(
  new TextEncoder().encode('"Zeit; \\ [s]";"T1 (°C)"\n0,5;21,5\n1,0;22,25\n1,5;23,0\n'),
  { timeColumn: '1', timeUnit: 's' },
);
const headFor = (more: Partial<Parameters<typeof importedHead>[0]> = {}) =>
  importedHead({
    fileName: 'log.csv',
    fileSha256: 'ab'.repeat(32),
    contentSha256: 'cd'.repeat(32),
    fileWrittenAt: '2026-03-02T08:15:00Z',
    program: 'test',
    layout,
    rules,
    probes: [],
    trialId: 'lot-7',
    assemblyName: 'WB-212',
    pressName: 'North',
    ...more,
  });

describe('the head of an imported recording', () => {
  it('gives back the layout and every number to the last digit after it was written and read', () => {
    const head = headFor();
    const lines = formatRecordingHead(head).split('\n').slice(1, -2);
    const read = parseRecordingHead(lines);
    expect(read).toEqual(head);
    expect(headLayout(read)).toEqual(layout);
    expect([read.targetC, read.holdS, read.platenSetPointC]).toEqual([
      rules.targetC,
      rules.holdS,
      rules.platenSetPointC,
    ]);
  });

  it('takes any file name', () => {
    fc.assert(
      fc.property(anyText, (fileName) => {
        const lines = formatRecordingHead(headFor({ fileName })).split('\n').slice(1, -2);
        expect(parseRecordingHead(lines).further['imported-from']).toBe(fileName);
      }),
    );
  });

  it('has the same id for the same bytes, reading and trial, another for any other', () => {
    const { recordingId } = headFor();
    expect(headFor({ fileWrittenAt: '2027-01-01T00:00:00Z', fileName: 'copy.csv' }).recordingId).toBe(
      recordingId,
    );
    for (const other of [
      { fileSha256: 'cd'.repeat(32) },
      { trialId: 'lot-8' },
      { rules: { ...rules, targetC: 177 } },
      { rules: { ...rules, closedAtS: null } },
      { layout: { ...layout, decimal: '.' as const } },
    ])
      expect(headFor(other).recordingId).not.toBe(recordingId);
  });

  it('refuses headings that are too long to keep', () => {
    expect(() => headFor({ layout: { ...layout, headingTexts: ['x'.repeat(200_001)] } })).toThrow(
      expect.objectContaining({ code: 'import-too-wide' }),
    );
  });

  it.each([
    '',
    '{',
    '{}',
    'null',
    JSON.stringify({ ...layout, delimiter: ':' }),
    JSON.stringify({ ...layout, temperatures: [] }),
  ])('with %j for a layout is refused by name', (text) => {
    expect(() => headLayout({ recordingId: 'a', further: { [LAYOUT_KEY]: text } })).toThrow(
      expect.objectContaining({ code: 'import-layout-unreadable' }),
    );
  });
});
