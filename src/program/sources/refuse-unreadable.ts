import type { SessionState } from '../../core/session/Session.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';

/** Refuses a reader or file whose lines gave no reading because something needed is not known, such as the unit. */
export function refuseUnreadable(
  name: string,
  { refusal, counts }: Pick<SessionState, 'refusal'> & { readonly counts: { readonly readings: number } },
): void {
  if (refusal === null || counts.readings > 0) return;
  throw new OptionError(
    `${neutralise(name)}: the readings cannot be used: ${neutralise(refusal.detail)}`,
    refusal.problem.startsWith('unit')
      ? 'Say the unit: --unit C, --unit F or --unit K'
      : 'See dwellwright help',
    refusal.problem,
  );
}
