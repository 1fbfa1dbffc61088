import type { SideOptions } from './gather-sides.ts';

/** Whether any option names a side of a comparison of warm-ups. */
export function comparesSides({ first, second, firstPress, secondPress }: SideOptions): boolean {
  return [first, second, firstPress, secondPress].some((one) => one !== undefined);
}
