import type { TrialIntent } from '../../core/screen/TrialIntent.ts';
import type { TrialScreenEvent } from '../../core/screen/TrialScreenEvent.ts';
import type { TrialScreenSetup } from '../../core/screen/TrialScreenState.ts';

export interface FrontOptions {
  readonly setup: TrialScreenSetup;
  readonly nowUs: () => number;
  readonly onIntent: (intent: TrialIntent) => void;
  readonly signal: AbortSignal;
  readonly ascii: boolean;
}

/** 'interrupted': by Ctrl-C on the screen; 'stopped': from outside. */
export type TrialLeft = 'quit' | 'interrupted' | 'stopped';

/** What a person sees of a live trial: the screen, or plain lines. */
export interface TrialFront {
  show(event: TrialScreenEvent): void;
  /** Resolves once the first picture stands: drawing it takes a while, and readings would wait meanwhile. */
  readonly drawn: Promise<void>;
  /** Resolves when the person leaves, or the signal ends it. */
  readonly left: Promise<TrialLeft>;
}
