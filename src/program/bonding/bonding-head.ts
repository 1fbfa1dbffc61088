import type { BondingJob } from '../../core/bonding/BondingState.ts';
import { HIGHEST_PEAK_KEY } from '../../core/cure/head-cure.ts';
import { probeHeadLines } from '../../core/probe/head-probes.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import { DIP_KEY } from '../../core/recording/head-dip.ts';
import type { ChannelRole, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import { VERSION } from '../command-line/version.ts';
import { runRules } from '../options/run-rules.ts';
import { newRecordingId } from '../trials/new-trial-id.ts';

export interface BondingHeadOptions {
  readonly job: BondingJob;
  readonly roles: readonly ChannelRole[];
  readonly probes: readonly (Probe | null)[];
  readonly initials: string | null;
  readonly portPath: string | null;
  readonly statedUnit: 'C' | 'F' | 'K' | null;
}

/** Rules of a recipe and the head of its recording: enough to analyse the recording again as the press did. */
export function bondingHead(options: BondingHeadOptions): {
  readonly head: RecordingHead;
  readonly rules: RunRules;
} {
  const { job, roles, probes, initials, portPath, statedUnit } = options;
  const { recipe, platenSetPointC, simulated } = job;
  const rules = runRules(
    {},
    {
      targetC: recipe.targetC,
      holdS: recipe.holdS,
      dip: recipe.dip,
      platenSetPointC,
      highestPeakC: recipe.highestPeakC,
    },
  );
  const head: RecordingHead = {
    recordingId: newRecordingId(),
    madeAt: new Date().toISOString(),
    program: `Dwellwright ${VERSION}`,
    roles,
    simulated,
    pressName: recipe.pressName,
    assemblyName: recipe.assemblyName,
    targetC: rules.targetC,
    holdS: rules.holdS,
    further: {
      'made-for': 'bonding',
      'recipe-version': String(recipe.version),
      [DIP_KEY]: rules.dip,
      ...probeHeadLines(probes),
      ...(rules.highestPeakC == null ? {} : { [HIGHEST_PEAK_KEY]: String(rules.highestPeakC) }),
    },
    ...(platenSetPointC === null ? {} : { platenSetPointC }),
    ...(initials === null ? {} : { operatorInitials: initials }),
    ...(portPath === null ? {} : { portPath }),
    ...(statedUnit === null ? {} : { statedUnit }),
  };
  return { head, rules };
}
