import type { Assembly } from '../press/Press.ts';
import type { Recheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { ReProof } from './to-be-re-proved.ts';

/** Why a recipe is to be proved anew. */
export type ReProveReason =
  | { readonly code: 'platens-moved'; readonly moved: ReProof }
  | { readonly code: 'older'; readonly ageDays: number; readonly limitDays: number }
  | { readonly code: 'adhesive-changed'; readonly was: string | null; readonly now: string | null }
  | { readonly code: 'data-sheet-changed'; readonly was: string | null; readonly now: string | null }
  | { readonly code: 'target-changed'; readonly thenC: number; readonly nowC: number }
  | { readonly code: 'hold-longer'; readonly thenS: number; readonly nowS: number }
  | { readonly code: 'dwell-above-highest'; readonly dwellS: number; readonly highestS: number }
  /** Later runs of the same assembly on the same press, by their stored results. */
  | { readonly code: 'later-runs'; readonly runs: number; readonly short: number; readonly outside: number };

export interface ReProveFacts {
  readonly recipe: Recipe;
  /** The assembly as it is entered today; null where it is not in this store. */
  readonly assembly: Assembly | null;
  /** Whether the platens have moved. */
  readonly moved: ReProof | null;
  /** The recipe held against later runs as they are stored; null where there are none. */
  readonly laterRuns: Recheck | null;
  /** Wall time now, ISO 8601. */
  readonly now: string;
  /** Days after which the shop proves a recipe anew; null where it has stated none. */
  readonly afterDays: number | null;
}

/** Temperatures nearer than this are the same, °C. */
const SAME_C = 0.05;
const DAY_MS = 86_400_000;

/** Everything that asks for a new proof of a recipe, the gravest first; empty where nothing does. */
export function reProveReasons(facts: ReProveFacts): readonly ReProveReason[] {
  const { recipe, moved, laterRuns } = facts;
  const reasons: ReProveReason[] = [];
  if (laterRuns?.verdict === 'does-not-hold') {
    const { comparable, holdMet, insideBand } = laterRuns.counts;
    reasons.push({
      code: 'later-runs',
      runs: comparable,
      short: comparable - holdMet,
      outside: laterRuns.bandS === null ? 0 : comparable - insideBand,
    });
  }
  reasons.push(...assemblyReasons(recipe, facts.assembly));
  if (moved !== null) reasons.push({ code: 'platens-moved', moved });
  const ageDays = Math.floor((Date.parse(facts.now) - Date.parse(recipe.acceptedAt)) / DAY_MS);
  if (facts.afterDays !== null && ageDays > facts.afterDays)
    reasons.push({ code: 'older', ageDays, limitDays: facts.afterDays });
  return reasons;
}

function assemblyReasons(recipe: Recipe, assembly: Assembly | null): readonly ReProveReason[] {
  if (assembly === null) return [];
  const reasons: ReProveReason[] = [];
  // What was not entered then or now says nothing of a change.
  const changed = (then: string | null, now: string | null) => then !== null && now !== null && then !== now;
  if (changed(recipe.adhesive, assembly.adhesive))
    reasons.push({ code: 'adhesive-changed', was: recipe.adhesive, now: assembly.adhesive });
  if (changed(recipe.dataSheetRevision, assembly.dataSheetRevision))
    reasons.push({
      code: 'data-sheet-changed',
      was: recipe.dataSheetRevision,
      now: assembly.dataSheetRevision,
    });
  if (Math.abs(assembly.targetC - recipe.targetC) > SAME_C)
    reasons.push({ code: 'target-changed', thenC: recipe.targetC, nowC: assembly.targetC });
  if (assembly.holdS > recipe.holdS)
    reasons.push({ code: 'hold-longer', thenS: recipe.holdS, nowS: assembly.holdS });
  if (assembly.highestDwellS !== null && recipe.dwellS > assembly.highestDwellS)
    reasons.push({
      code: 'dwell-above-highest',
      dwellS: recipe.dwellS,
      highestS: assembly.highestDwellS,
    });
  return reasons;
}
