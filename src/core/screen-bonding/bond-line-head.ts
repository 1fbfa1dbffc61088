import type { BondingState } from '../bonding/BondingState.ts';
import { bondLineNow } from '../bonding/bond-line-now.ts';
import { allowedBand } from '../bonding/watch-band.ts';
import type { SegmentRole } from '../chart/StyledRow.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';

/** What a glance must tell of the bond line: a temperature, or in its place what is wrong; its standing as a word. */
export interface BondLineHead {
  readonly figure: string;
  readonly role: SegmentRole;
  /** An old value is drawn in a broken shade. */
  readonly faded: boolean;
  readonly caption: string;
  readonly word: string;
  readonly wordRole: SegmentRole;
}

/** Null without a probe at the bond line. Inside its band it is never in the colour of a fault. */
export function bondLineHead(state: BondingState): BondLineHead | null {
  const { state: words, ...text } = BONDING_TEXT;
  const now = bondLineNow(state);
  const { unit, job, under } = state;
  const wrong = (figure: string, word: string, caption: string): BondLineHead => ({
    figure,
    role: 'fault',
    faded: false,
    caption,
    word,
    wordRole: 'fault',
  });
  switch (now.kind) {
    case 'no-probe':
      return null;
    case 'no-reading':
      return now.lost
        ? wrong(words.lost, words.reader, text.lostCaption)
        : { ...wrong('---', words['no-reading'], text.noReadingCaption), role: 'quiet', wordRole: 'caution' };
    case 'fault':
      return wrong(words.fault, words.probe, text.faultCaption(now.fault));
    case 'stale':
      return {
        figure: now.temperatureC === null ? '---' : figureOf(now.temperatureC, unit),
        role: 'quiet',
        faded: true,
        caption: text.oldCaption(now.ageS),
        word: text.old(now.ageS),
        wordRole: 'caution',
      };
    case 'known':
      break;
  }
  const targetC = job?.recipe.targetC ?? 0;
  const known = { figure: figureOf(now.temperatureC, unit), role: 'strong', faded: false } as const;
  const closed = under !== null && under.openedUs === null;
  const allowed = allowedBand(state);
  if (closed && allowed !== null) {
    const side = under.band?.value ?? 'inside';
    return {
      ...known,
      caption: text.bandCaption(allowed.lowC, allowed.highC, unit),
      word: side === 'inside' ? words['in-band'] : words[side],
      wordRole: side === 'inside' ? 'good' : 'caution',
    };
  }
  const atTarget = now.temperatureC >= targetC;
  return {
    ...known,
    caption: text.targetCaption(targetC, unit),
    word: !closed ? words['bond-line'] : atTarget ? words['at-target'] : words.heating,
    wordRole: closed && atTarget ? 'good' : 'plain',
  };
}

const figureOf = (temperatureC: number, unit: 'F' | 'C'): string =>
  `${Math.round(unit === 'F' ? temperatureC * 1.8 + 32 : temperatureC)}°${unit}`;
