import { recipesInForce } from '../../core/bonding/recipes-in-force.ts';
import type { HomeFacts, PortFacts, TrialFacts } from '../../core/screen-home/HomeFacts.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { countingRuns } from '../../core/trial/counting-runs.ts';
import { reProveReasonsOf } from '../trials/re-prove-reasons-of.ts';
import { HOME_ENTRIES } from './home-entries.ts';

/** As many of the latest trials as the home looks at. */
const LATEST_TRIALS = 12;

export interface LoadFactsOptions {
  readonly ports: readonly PortFacts[] | null;
  readonly freeBytes: number | null;
  /** True for the records, false for the home. */
  readonly allTrials: boolean;
}

/** What the store knows, as the screens around the trial show it. */
export function loadFacts(store: Store, { ports, freeBytes, allTrials }: LoadFactsOptions): HomeFacts {
  const presses = store.presses();
  const recipes = store.recipes();
  const trials = [...store.trials()].reverse();
  const proved = new Set(recipes.flatMap((recipe) => recipe.restsOn.map((run) => run.recordingId)));
  return {
    presses,
    assemblies: store.assemblies(),
    recipes: [...recipes].reverse(),
    toBeReProved: reProveReasonsOf(
      store,
      recipesInForce(recipes),
      new Date().toISOString(),
      LATEST_TRIALS,
    ).filter((reasons) => reasons.length > 0).length,
    trials: trials
      .slice(0, allTrials ? trials.length : LATEST_TRIALS)
      .map((trial) => trialFacts(store, trial, proved)),
    trialCount: trials.length,
    ports,
    rolesByPress: Object.fromEntries(
      presses.flatMap(({ name }) => {
        const roles = store.setting(`roles:${name}`);
        return roles === undefined ? [] : [[name, roles]];
      }),
    ),
    storePath: neutralise(store.path),
    freeBytes,
    entries: HOME_ENTRIES.map(({ key, word, detail }) => ({ key, word, detail })),
  };
}

function trialFacts(store: Store, trial: StoredTrial, proved: ReadonlySet<string>): TrialFacts {
  const runs = store.trialRuns(trial.trialId);
  const { counting } = countingRuns(runs);
  const soakS = counting.flatMap(({ result }) => result.soakTimeS ?? []);
  return {
    ...trial,
    when: localWhen(trial.startedAt),
    runs: runs.length,
    countingRuns: counting.length,
    meanSoakS: soakS.length === 0 ? null : soakS.reduce((sum, one) => sum + one, 0) / soakS.length,
    hasRecipe: trial.recordingIds.some((id) => proved.has(id)),
  };
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "25 Nov 2026 14:03" in local time; the text as it stands where it is no date. */
export function localWhen(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return neutralise(iso);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(date.getDate())} ${MONTHS[date.getMonth()]} ${date.getFullYear()} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
