import type { Probe } from '../../core/probe/Probe.ts';
import { probeCommonPart } from '../../core/probe/probe-common-part.ts';
import { probeUncertaintyC } from '../../core/probe/probe-uncertainty-c.ts';
import { defaultCommonParts } from '../../core/uncertainty/default-common-parts.ts';
import type { CommonPart } from '../../core/uncertainty/SoakTimeBudget.ts';
import type { PartCode } from '../../core/uncertainty/UncertaintyPart.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperatureDifference } from '../../core/units/parse-temperature-difference.ts';
import { OptionError } from './OptionError.ts';

/** Parts that a user may state; the probe's own comes from its record. */
const STATED: readonly PartCode[] = [
  'cold-junction',
  'inhomogeneity',
  'tip-placement',
  'probe-lag',
  'platen-offset',
  'clock',
  'other',
];

/**
 * Parts of the uncertainty common to all runs: the probe that gave the crossings (of several the one that leaves most
 * open), else a new probe within its tolerance; and each `--part CODE:LIMIT`, a limit ± in °C, °F or s.
 */
export function commonParts(
  probes: readonly Probe[],
  stated: readonly string[],
  targetC: number,
): readonly CommonPart[] {
  const open = (probe: Probe) => probeUncertaintyC(probe, targetC).standardUncertaintyC;
  const worst = [...probes].sort((a, b) => open(b) - open(a))[0];
  const own = worst === undefined ? defaultCommonParts(targetC) : [probeCommonPart(worst, targetC)];
  const further = stated.map(statedPart);
  const twice = further.find(({ code }) => own.some((part) => part.includes?.includes(code)));
  if (twice !== undefined) {
    throw new OptionError(
      `--part ${twice.code}: the probe was calibrated together with its reader, so its calibration holds that already`,
      'Leave it out, or say with: dwellwright probes NAME --reader not-included',
    );
  }
  return [...own, ...further];
}

function statedPart(text: string): CommonPart {
  const colon = text.indexOf(':');
  const code = STATED.find((one) => one === text.slice(0, colon).trim());
  const limit = text.slice(colon + 1).trim();
  if (code === undefined) {
    throw new OptionError(
      `--part: expected one of ${STATED.join(', ')} and its limit, came "${text}"`,
      'Write --part cold-junction:1C, --part probe-lag:0.5s or --part platen-offset:5F',
    );
  }
  if (/s$|min$/i.test(limit)) return { code, stated: { limitS: parseDuration(limit, '--part') } };
  return { code, stated: { limitC: Math.abs(parseTemperatureDifference(limit, '--part')) } };
}
