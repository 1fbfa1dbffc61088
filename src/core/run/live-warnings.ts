import type { RunReason } from './RunResult.ts';
import type { RunUnderWay } from './RunUnderWay.ts';

/** Reasons that can be told while the run is still going on. */
export function liveWarnings(run: RunUnderWay): readonly RunReason[] {
  const warnings: RunReason[] = [];
  if (run.spoiltReason !== null)
    warnings.push({ code: 'spoilt', severity: 'unusable', facts: { why: run.spoiltReason } });
  const { trace, bondLineChannels, rules, roles } = run.around;
  if (trace.length > 0) {
    const last = trace.length - 1;
    for (const channel of bondLineChannels) {
      const fault = trace.faultAt(channel, last);
      if (fault !== null)
        warnings.push({
          code: 'probe-open-circuit',
          severity: 'suspect',
          facts: { channel: channel + 1, role: roles[channel]!, fault },
        });
    }
  }
  const startC = run.onset?.baselineC;
  if (startC !== undefined && rules.ambientC !== null && startC > rules.ambientC + rules.warmCarrierLimitC)
    warnings.push({
      code: 'carrier-warm',
      severity: 'suspect',
      facts: { startC, ambientC: rules.ambientC, limitC: rules.warmCarrierLimitC },
    });
  return warnings;
}
