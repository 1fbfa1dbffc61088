import type { EquivalencePlan } from './EquivalencePlan.ts';

/** Key under which a store keeps the margins for an assembly on two presses. */
export function marginsKey(assembly: string, first: string, second: string): string {
  return `margins:${JSON.stringify([assembly, first, second])}`;
}

/**
 * Margins stated beforehand for these presses, in either order (slower and faster change places with the presses).
 * `read` gives a setting's text. Null where none were stated, or where the text is not one of ours.
 */
export function storedPlan(
  { assembly, first, second }: { readonly assembly: string; readonly first: string; readonly second: string },
  read: (key: string) => string | undefined,
): EquivalencePlan | null {
  const straight = planFrom(read(marginsKey(assembly, first, second)));
  if (straight !== null) return straight;
  const turned = planFrom(read(marginsKey(assembly, second, first)));
  return turned === null ? null : { ...turned, slowerS: turned.fasterS, fasterS: turned.slowerS };
}

function planFrom(text: string | undefined): EquivalencePlan | null {
  if (text === undefined) return null;
  const { slowerS, fasterS, statedAt } = JSON.parse(text) as Partial<EquivalencePlan>;
  const sound = Number(slowerS) > 0 && Number(fasterS) > 0 && typeof statedAt === 'string';
  return sound ? { slowerS: Number(slowerS), fasterS: Number(fasterS), statedAt: statedAt as string } : null;
}
