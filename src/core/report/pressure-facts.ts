import { REPORT_TEXT } from '../text/report-text.ts';
import { pressureText } from '../text/units-text.ts';
import { fact } from './fact.ts';
import type { ReportJob } from './TrialReportInput.ts';

/** The gauge pressure where it was stated; else room to write it, beside the band it belongs in. */
export function pressureFacts({
  pressure,
  gaugeStated,
  gaugePsi,
}: Pick<ReportJob, 'pressure' | 'gaugeStated' | 'gaugePsi'>) {
  if (pressure === null)
    return [fact(REPORT_TEXT.gauge, gaugePsi === null ? null : pressureText(gaugePsi, 1))];
  const band = fact(
    REPORT_TEXT.gaugeBand,
    REPORT_TEXT.bandOf({
      low: pressureText(pressure.bandLowGaugePsi, 1),
      high: pressureText(pressure.bandHighGaugePsi, 1),
      netLow: pressureText(pressure.bandLowPsi),
      netHigh: pressureText(pressure.bandHighPsi),
    }),
  );
  if (!gaugeStated) return [fact(REPORT_TEXT.gauge, null), band];
  const { netFacingLowPsi, netFacingHighPsi } = pressure;
  const spread =
    netFacingLowPsi === null || netFacingHighPsi === null
      ? null
      : REPORT_TEXT.gaugeSpread(pressureText(netFacingLowPsi), pressureText(netFacingHighPsi));
  return [
    fact(REPORT_TEXT.gauge, pressureText(pressure.gaugePsi, 1)),
    fact(
      REPORT_TEXT.netFacing,
      REPORT_TEXT.netFacingOf(pressureText(pressure.netFacingPsi), pressure.side, spread),
    ),
    band,
  ];
}
