import type { BondingState, CycleUnderWay } from '../bonding/BondingState.ts';
import { bondLineNow, hasProbe } from '../bonding/bond-line-now.ts';
import { platensNow } from '../bonding/platens-now.ts';
import { LIMITS } from '../run/limits.ts';
import type { ViewLine } from '../screen/TrialView.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import { holdUnseen, holdVerified } from './head-of.ts';

/** What stands in plain letters under the block letters, what matters most first. */
export function factsOf(state: BondingState): readonly ViewLine[] {
  const { job, under, nowUs } = state;
  if (job === null) return [];
  const { recipe } = job;
  const gauge: ViewLine =
    job.gaugeRemark == null
      ? { text: BONDING_TEXT.gauge(job.gaugePsi), role: 'plain' }
      : { text: job.gaugeRemark, role: 'caution' };
  if (under === null) {
    const leftS =
      recipe.leastRecoveryS === null || state.lastOpenedUs === null
        ? 0
        : recipe.leastRecoveryS - (nowUs - state.lastOpenedUs) / 1e6;
    // A warning comes before what is as it should be.
    return [
      ...(job.gaugeRemark == null ? [] : [gauge]),
      ...platenLines(state),
      ...(job.gaugeRemark == null ? [gauge] : []),
      ...troubleLine(state),
      ...(leftS > 0 ? [{ text: BONDING_TEXT.tooSoon(leftS), role: 'caution' as const }] : []),
    ];
  }
  if (under.openedUs !== null) {
    const leftS = LIMITS.undoS - (nowUs - under.openedUs) / 1e6;
    return [
      { text: BONDING_TEXT.opened(leftS), role: 'plain' },
      ...troubleLine(state),
      ...platenLines(state),
    ];
  }
  return [
    ...troubleLine(state),
    ...(hasProbe(state) ? [holdLine(state, under)] : []),
    { text: BONDING_TEXT.closed((nowUs - under.closedUs) / 1e6, recipe.dwellS), role: 'plain' },
    ...noBandLine(state),
    ...platenLines(state),
    gauge,
  ];
}

function platenLines(state: BondingState): readonly ViewLine[] {
  const { job, unit } = state;
  if (job === null) return [];
  const platens = platensNow(state);
  return platens.length === 0
    ? [{ text: BONDING_TEXT.noPlatens(job.platenSetPointC, unit), role: 'plain' }]
    : platens.map((one) => ({
        text: BONDING_TEXT.platen(one, job.platenBandC, unit),
        role: one.inside === true ? 'plain' : 'caution',
      }));
}

/** Why there is no bond line, in full; nothing where it is known or only old. */
function troubleLine(state: BondingState): readonly ViewLine[] {
  const now = bondLineNow(state);
  if (now.kind === 'known' || now.kind === 'stale') return [];
  const role = now.kind === 'no-probe' || (now.kind === 'no-reading' && !now.lost) ? 'quiet' : 'fault';
  return [{ text: BONDING_TEXT.bondLine(now, state.unit), role }];
}

function noBandLine({ job, ...state }: BondingState): readonly ViewLine[] {
  return job === null || job.band.length > 0 || !hasProbe({ job, ...state })
    ? []
    : [{ text: `${BONDING_TEXT.noBand}.`, role: 'quiet' }];
}

function holdLine(state: BondingState, under: CycleUnderWay): ViewLine {
  const counted = BONDING_TEXT.hold(state.session?.run.holdCountedS ?? 0, state.job?.recipe.holdS ?? 0);
  if (holdUnseen(state, under)) return { text: `${counted} ${BONDING_TEXT.holdUnseen}`, role: 'caution' };
  return holdVerified(state, under)
    ? { text: `${counted} ${BONDING_TEXT.holdSeen}`, role: 'good' }
    : { text: counted, role: 'plain' };
}
