import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { Store } from '../../core/store/Store.ts';
import { exchangeRefusals, importQuestions } from '../../core/text/exchange-text.ts';
import { newTrialId } from '../trials/new-trial-id.ts';
import type { Ask } from './ask.ts';
import type { ImportTrial } from './PreparedImport.ts';

/** What is known of a file that needs a trial. */
export interface TrialWish {
  readonly path: string;
  /** Null for another logger's file. */
  readonly head: RecordingHead | null;
}

export interface TrialNames {
  readonly assemblyName: string;
  readonly pressName: string;
}

interface ChooserParts {
  readonly store: Store;
  readonly options: { readonly trial?: string; readonly assembly?: string; readonly press?: string };
  readonly ask: Ask | null;
  readonly now: Date;
}

/** Unicode letters and digits so that people can write ids in their own language. */
const TRIAL_ID = /^[\p{L}\p{N}._-]{1,64}$/u;
const SAME_TARGET_C = 0.005;
const SAME_HOLD_S = 0.0005;

/**
 * Finds the trial for each file of one import: the one named by option, else the one that a recording's head names, else
 * a new one for all files of one assembly, press, target and hold. Refuses what does not belong together.
 */
export function createTrialChooser({ store, options, ask, now }: ChooserParts) {
  const chosen = new Map<string, ImportTrial>();
  const fresh = new Map<string, string>();
  const conditions = new Map<string, { readonly targetC: number; readonly holdS: number }>();
  const answers: { assembly?: string; press?: string } = {};

  const existing = (trialId: string): ImportTrial | undefined => {
    const trials = store.trials();
    const begun = trials.filter((one) => one.trialId.startsWith(trialId));
    const found =
      trials.find((one) => one.trialId === trialId) ?? (begun.length === 1 ? begun[0] : undefined);
    if (found === undefined) return undefined;
    const { assemblyName, pressName, simulated } = found;
    return { trialId: found.trialId, assemblyName, pressName, simulated, isNew: false };
  };

  const nameOf = async (what: 'assembly' | 'press', wish: TrialWish): Promise<string> => {
    const stated = what === 'assembly' ? wish.head?.assemblyName : wish.head?.pressName;
    const name = (options[what] ?? stated ?? answers[what] ?? '').trim();
    if (name !== '') return name;
    if (ask === null)
      throw new ExchangeError('import-name-missing', exchangeRefusals.nameMissing(wish.path, what));
    answers[what] = await ask(importQuestions[what], (answer) =>
      answer === '' ? importQuestions.needed : null,
    );
    return answers[what];
  };

  const check = (wish: TrialWish, trial: ImportTrial): void => {
    for (const [what, has, came] of [
      ['assembly', trial.assemblyName, options.assembly],
      ['press', trial.pressName, options.press],
      ['assembly', trial.assemblyName, wish.head?.assemblyName],
      ['press', trial.pressName, wish.head?.pressName],
    ] as const) {
      if (came !== undefined && came !== has)
        throw new ExchangeError(
          'import-trial-differs',
          exchangeRefusals.trialDiffers(wish.path, trial.trialId, what, has, came),
        );
    }
    if (trial.simulated !== (wish.head?.simulated ?? false))
      throw new ExchangeError(
        'import-simulated-mixed',
        exchangeRefusals.simulatedMixed(wish.path, trial.trialId),
      );
  };

  return {
    /** Names of the trial that a file will be in, before its target and hold are known. */
    async names(wish: TrialWish): Promise<TrialNames> {
      const wanted = options.trial ?? wish.head?.trialId;
      const trial = wanted === undefined ? undefined : (existing(wanted) ?? chosen.get(wanted));
      if (trial !== undefined) return trial;
      return { assemblyName: await nameOf('assembly', wish), pressName: await nameOf('press', wish) };
    },

    /** The trial for a file of these names, target and hold. */
    choose(
      wish: TrialWish,
      names: TrialNames,
      rules: { readonly targetC: number; readonly holdS: number },
    ): ImportTrial {
      const simulated = wish.head?.simulated ?? false;
      const wanted = options.trial ?? wish.head?.trialId;
      if (wanted !== undefined && !TRIAL_ID.test(wanted))
        throw new ExchangeError('import-trial-differs', exchangeRefusals.trialIdUnusable(wanted));
      const { assemblyName, pressName } = names;
      const key = JSON.stringify([assemblyName, pressName, simulated, rules.targetC, rules.holdS]);
      if (wanted === undefined && !fresh.has(key)) fresh.set(key, newTrialId(now));
      const trialId = wanted ?? (fresh.get(key) as string);
      const trial = chosen.get(trialId) ??
        existing(trialId) ?? { trialId, assemblyName, pressName, simulated, isNew: true };
      check(wish, trial);
      const before = conditions.get(trial.trialId) ?? storedConditions(store, trial.trialId);
      if (before !== null) checkConditions(wish, trial, before, rules);
      conditions.set(trial.trialId, before ?? rules);
      chosen.set(trialId, trial);
      return trial;
    },
  };
}

export type TrialChooser = ReturnType<typeof createTrialChooser>;

/** Target and hold that the first recording of a stored trial states; null where it states none. */
function storedConditions(store: Store, trialId: string) {
  const first = store.trials().find((one) => one.trialId === trialId)?.recordingIds[0];
  const head = first === undefined ? undefined : store.recording(first)?.head;
  return head?.targetC === undefined || head.holdS === undefined
    ? null
    : { targetC: head.targetC, holdS: head.holdS };
}

function checkConditions(
  { path }: TrialWish,
  { trialId }: ImportTrial,
  has: { readonly targetC: number; readonly holdS: number },
  came: { readonly targetC: number; readonly holdS: number },
): void {
  const refuse = (what: string, unit: string, had: number, got: number): never => {
    throw new ExchangeError(
      'import-trial-differs',
      exchangeRefusals.trialDiffers(path, trialId, what, `${had} ${unit}`, `${got} ${unit}`),
    );
  };
  if (Math.abs(has.targetC - came.targetC) > SAME_TARGET_C) refuse('target', '°C', has.targetC, came.targetC);
  if (Math.abs(has.holdS - came.holdS) > SAME_HOLD_S) refuse('hold', 's', has.holdS, came.holdS);
}
