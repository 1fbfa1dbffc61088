import { neutralise } from './neutralise.ts';

/** What a reader's `error PROBLEM WORD#CCCC` means for a person: "The reader refused rate: it has no such value." */
export function readerRefusedText(line: string): string {
  const [, problem = '', word = ''] = (line.split('#')[0] ?? '').split(' ');
  const command = word === '-' || word === '' ? 'a command' : `"${neutralise(word)}"`;
  switch (problem) {
    case 'range':
      return `The reader refused ${command}: it has no such value.`;
    case 'fixed':
      return `The reader refused ${command}: it cannot change that.`;
    case 'busy':
      return `The reader refused ${command}: it is busy.`;
    default:
      return `The reader refused ${command} (${neutralise(problem)}).`;
  }
}
