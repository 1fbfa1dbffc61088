import { DwellwrightError } from '../../core/DwellwrightError.ts';
import type { HomeEvent, HomeIntent } from '../../core/screen-home/HomeEvent.ts';
import type { Store } from '../../core/store/Store.ts';
import { HOME_TEXT } from '../../core/text/home-text.ts';
import { RECORDS_TEXT } from '../../core/text/records-text.ts';
import { secondsText } from '../../core/text/units-text.ts';
import { rememberPlan } from './remembered-plan.ts';

export interface ObeyHomeOptions {
  readonly store: Store;
  readonly dispatch: (event: HomeEvent) => void;
  readonly nowUs: () => number;
  /** Reads the store again; with true every trial. */
  readonly refresh: (allTrials?: boolean) => void;
}

/**
 * Does what the screens around the trial ask for without leaving them, one wish after the other. A refusal is shown,
 * nothing is lost. Modules that work out figures load when first needed.
 */
export async function obeyHome(intent: HomeIntent, options: ObeyHomeOptions): Promise<void> {
  try {
    await obey(intent, options);
  } catch (error) {
    if (!(error instanceof DwellwrightError)) throw error;
    const text = error.remedy === null ? error.message : `${error.message}. ${error.remedy}`;
    options.dispatch({ kind: 'notice', text, tone: 'caution', atUs: options.nowUs() });
  }
}

async function obey(intent: HomeIntent, { store, dispatch, nowUs, refresh }: ObeyHomeOptions): Promise<void> {
  const good = (text: string) => dispatch({ kind: 'notice', text, tone: 'good', atUs: nowUs() });
  const load = async (trialId: string): Promise<void> => {
    const { loadTrial } = await import('./load-trial.ts');
    dispatch({ kind: 'trial-loaded', trial: loadTrial(store, trialId), atUs: nowUs() });
  };
  switch (intent.kind) {
    case 'save-press':
      store.savePress(intent.press);
      refresh();
      return;
    case 'save-assembly':
      store.saveAssembly(intent.assembly);
      refresh();
      return;
    case 'save-plan':
      rememberPlan(store, intent.plan);
      return;
    case 'save-roles':
      store.saveSetting(`roles:${intent.pressName}`, intent.roles.join(','));
      refresh();
      good(HOME_TEXT.readerSaved);
      return;
    case 'unit':
      store.saveSetting('unit', intent.unit);
      return;
    case 'close-trial':
      store.closeTrial(intent.trialId, new Date().toISOString());
      refresh();
      return;
    case 'load-all':
      refresh(true);
      return;
    case 'load-trial':
      await load(intent.trialId);
      return;
    case 'load-traces': {
      const { loadTraces } = await import('./load-traces.ts');
      const traces = loadTraces(store, intent.trialId, intent.runs);
      dispatch({ kind: 'traces-loaded', traces, atUs: nowUs() });
      return;
    }
    case 'load-cycles': {
      const { loadCycles } = await import('./load-cycles.ts');
      dispatch({ kind: 'cycles-loaded', cycles: loadCycles(store), atUs: nowUs() });
      return;
    }
    case 'load-cycle-trace': {
      const { loadCycleTrace } = await import('./load-cycles.ts');
      dispatch({ kind: 'traces-loaded', traces: loadCycleTrace(store, intent.cycleId), atUs: nowUs() });
      return;
    }
    case 'decide-run': {
      const run = store.trialRuns(intent.trialId)[intent.run];
      if (run === undefined) return;
      store.decideRun({
        recordingId: run.recordingId,
        runNumber: run.result.runNumber,
        kind: intent.decision,
        reason: intent.reason,
        decidedAt: new Date().toISOString(),
      });
      refresh();
      await load(intent.trialId);
      good(RECORDS_TEXT.decided(intent.run + 1));
      return;
    }
    case 'accept-recipe': {
      const { acceptStored } = await import('../trials/accept-stored.ts');
      const { rule, initials } = intent;
      const acceptedAt = new Date().toISOString();
      const recipe = acceptStored(store, intent.trialId, { rule, initials, note: '', acceptedAt });
      refresh();
      good(RECORDS_TEXT.accepted(recipe.version, secondsText(recipe.dwellS)));
      return;
    }
    case 'start-trial':
    case 'replay':
    case 'demo':
    case 'entry':
    case 'quit':
      // These leave the screen; the caller does them.
      return;
  }
}
