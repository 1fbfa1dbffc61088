import { describe, expect, it } from 'vitest';
import type { RunReason, RunReasonCode } from '../../../src/core/run/RunResult.ts';
import { runReasonText } from '../../../src/core/text/run-reasons.ts';

const EVERY: Readonly<Record<RunReasonCode, true>> = {
  'target-never-reached': true,
  'no-press-closed': true,
  'gap-at-crossing': true,
  'fault-at-crossing': true,
  'probe-open-circuit': true,
  'probe-on-platen': true,
  'plug-reversed': true,
  spoilt: true,
  'started-above-target': true,
  'no-readings': true,
  'carrier-warm': true,
  'slow-rise': true,
  'platen-low': true,
  'opened-early': true,
  'late-mark': true,
  'marks-disagree': true,
  'uneven-bond-line': true,
  'probe-not-at-bond-line': true,
  'wrong-thermocouple-type': true,
  'second-junction': true,
  'extension-reversed': true,
  'ground-shift': true,
  interference: true,
  'from-onset': true,
  'ready-check-not-passed': true,
  'gap-near-crossing': true,
  'clock-drift': true,
  gap: true,
  'reader-restarted': true,
  'hold-dipped': true,
  'hold-not-verified': true,
  'recording-not-closed': true,
  'recording-altered': true,
  noisy: true,
  'clock-apart': true,
  'clock-backwards': true,
  'off-reference': true,
  'peak-above-limit': true,
};

describe('sentences for reasons', () => {
  it.each(Object.keys(EVERY) as RunReasonCode[])('%s has one plain sentence even without figures', (code) => {
    const sentence = runReasonText({ code, severity: 'note', facts: {} }, { unit: 'F' });
    expect(sentence).toMatch(/^[A-Z].*[.?]$/);
    expect(sentence).not.toMatch(/undefined|NaN|null/);
    expect(sentence).not.toMatch(/open the press/i);
  });

  const warm: RunReason = {
    code: 'carrier-warm',
    severity: 'suspect',
    facts: { startC: 45, ambientC: 25, limitC: 15 },
  };

  it('gives °F first with °C at hand, and a difference without the 32: 45 °C, 15 °C above 25 °C', () => {
    expect(runReasonText(warm, { unit: 'F' })).toBe(
      'Carrier started warm: 113 °F (45 °C), more than 27 °F (15 °C) above 77 °F (25 °C); the soak time is short.',
    );
  });

  it('gives °C first where chosen', () => {
    expect(runReasonText(warm, { unit: 'C' })).toContain(
      '45 °C (113 °F), more than 15 °C (27 °F) above 25 °C (77 °F)',
    );
  });
});
