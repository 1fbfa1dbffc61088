import type { Assembly, Press } from '../press/Press.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { StoredTrial } from '../store/Store.ts';

/** A stored trial with what its runs came to. */
export interface TrialFacts extends StoredTrial {
  /** Local date and time of its start, for people. */
  readonly when: string;
  readonly runs: number;
  readonly countingRuns: number;
  readonly meanSoakS: number | null;
  readonly hasRecipe: boolean;
}

export interface PortFacts {
  readonly path: string;
  readonly maker: string | null;
}

/** A way into another part of the program, offered on the home. */
export interface HomeEntry {
  /** One lower-case letter. */
  readonly key: string;
  readonly word: string;
  readonly detail: string;
  /** Asked for first where it is not known. */
  readonly needs?: 'reader';
}

/** What the home shows: from the store, from the ports, from the disk. Names already neutralised. */
export interface HomeFacts {
  readonly presses: readonly Press[];
  readonly assemblies: readonly Assembly[];
  readonly recipes: readonly Recipe[];
  /** How many recipes in force ask for a new proof; absent where nobody looked. */
  readonly toBeReProved?: number;
  /** Newest first; the latest dozen until the records ask for all. */
  readonly trials: readonly TrialFacts[];
  /** Of all trials in the store. */
  readonly trialCount: number;
  /** Null while the ports are being looked for. */
  readonly ports: readonly PortFacts[] | null;
  /** Channels remembered per press, parted by commas. */
  readonly rolesByPress: Readonly<Record<string, string>>;
  readonly storePath: string;
  readonly freeBytes: number | null;
  /** Entries that other parts of the program add. */
  readonly entries: readonly HomeEntry[];
}

/** What the next trial starts with; remembered between starts. */
export interface TrialPlan {
  readonly pressName: string | null;
  readonly assemblyName: string | null;
  /** 'simulated' or the path of a port. */
  readonly reader: string | null;
  /** Unit that the reader's bare numbers are in; null: the reader says so. */
  readonly readerUnit: 'F' | 'C' | null;
  readonly ring: 'fresh' | 're-used' | null;
  readonly coating: 'coated' | 'bare' | null;
  readonly probe: 're-laid' | 'left' | null;
  readonly initials: string | null;
}

export const EMPTY_PLAN: TrialPlan = Object.freeze({
  pressName: null,
  assemblyName: null,
  reader: null,
  readerUnit: null,
  ring: 'fresh',
  coating: 'coated',
  probe: 're-laid',
  initials: null,
});
