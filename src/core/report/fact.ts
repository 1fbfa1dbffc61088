import { neutralise } from '../text/neutralise.ts';

/** An empty value leaves a line to write on. */
export function fact(name: string, value: string | null) {
  return { name, value: value === null ? '' : neutralise(value) };
}
