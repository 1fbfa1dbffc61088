import type { Picture } from '../../core/figure/Picture.ts';
import { transferPicture } from '../../core/report/transfer-section.ts';
import { NOTHING_TO_DRAW } from '../../core/text/nothing-to-draw.ts';
import { OptionError } from '../options/OptionError.ts';
import type { GatheredTrial } from './GatheredTrial.ts';
import { type TransferOptions, transferOfTrials } from './transfer-of-trials.ts';

/** Soak times of this trial and of the stored one named with `--against`, on two presses. */
export async function pressesPicture(gathered: GatheredTrial, options: TransferOptions): Promise<Picture> {
  if (options.against === undefined)
    throw new OptionError(
      'chart: --view presses needs a second trial',
      'Name it: --against TRIAL, a stored trial of the same assembly on another press',
    );
  const { comparison, presses, setting } = await transferOfTrials(gathered, options, '');
  const picture = transferPicture(comparison, presses, setting);
  if (picture !== null) return picture;
  throw new OptionError(
    'chart: nothing to draw in the view "presses"',
    NOTHING_TO_DRAW.presses,
    'nothing-to-draw',
  );
}
