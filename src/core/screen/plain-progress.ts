import type { RunEvent, RunState } from '../run/RunEvent.ts';
import { progressText } from '../text/progress-text.ts';
import type { TrialScreenEvent } from './TrialScreenEvent.ts';
import type { LinkStatus, TrialScreenSetup } from './TrialScreenState.ts';

/** The trial without a terminal: what happened, one plain line each, from the very events that feed the screen. */
export interface PlainProgress {
  lines(event: TrialScreenEvent): readonly string[];
}

/** Starts the plain lines of a trial. Times count from the recording's first reading, as in its results. */
export function createPlainProgress(setup: Pick<TrialScreenSetup, 'unit' | 'simulated'>): PlainProgress {
  const text = progressText(setup.unit);
  let link: LinkStatus['kind'] = 'opening';
  let gaps = 0;
  let refused = false;
  let told = false;
  const once = setup.simulated ? [text.simulated] : [];
  return {
    lines(event) {
      const lines: string[] = told ? [] : [...once];
      told = true;
      if (event.kind === 'link' && event.link.kind !== link) {
        if (event.link.kind === 'lost') lines.push(text.readerLost(event.link.cause));
        else if (link === 'lost') lines.push(text.readerBack);
        link = event.link.kind;
      }
      if (event.kind === 'notice') lines.push(event.text);
      if (event.kind === 'store' && event.store.trouble !== null)
        lines.push(text.storeTrouble(event.store.trouble));
      if (event.kind === 'session') {
        const { state } = event;
        if (state.refusal !== null && !refused) lines.push(text.refused(state.refusal.detail));
        refused ||= state.refusal !== null;
        if (state.counts.gaps > gaps) lines.push(text.gap(state.run.latestTimeS));
        gaps = state.counts.gaps;
        for (const runEvent of event.events) lines.push(...linesOf(runEvent, state.run));
      }
      return lines;
    },
  };

  function linesOf(event: RunEvent, run: RunState): readonly string[] {
    switch (event.kind) {
      case 'press-closed':
        return [text.pressClosed(event.pressClosed)];
      case 'onset':
        return [text.onset(event.onset.timeS)];
      case 'crossing-provisional':
        return [text.crossing(event.crossing, event.channel, 'provisional')];
      case 'crossing-final':
        return event.crossing === null ? [] : [text.crossing(event.crossing, event.channel, 'final')];
      case 'dip':
        return [text.dip(event.fromS)];
      case 'hold-done':
        return [text.holdDone(event.timeS, run)];
      case 'contact-let-go':
      case 'contact-again':
        return [text.contact(event.kind, event.timeS)];
      case 'opening-hinted':
        return [text.openingHinted(event.timeS)];
      case 'opened':
        return [text.opened(event.timeS)];
      case 'run-finished':
        return text.runFinished(event.result);
    }
  }
}
