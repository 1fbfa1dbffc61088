import { describe, expect, test } from 'vitest';
import {
  rateCommand,
  readCommand,
  thermocoupleTypeCommand,
} from '../../../../src/core/wire/protocol/index.ts';

describe('host commands', () => {
  test.each([
    ['identify', { kind: 'identify' }],
    ['start', { kind: 'start' }],
    ['stop', { kind: 'stop' }],
    ['rate 0.5', { kind: 'rate', hz: 0.5 }],
    ['type 16 B', { kind: 'type', channel: 16, type: 'B' }],
    ['rate', { kind: 'refused', problem: 'arguments', word: 'rate' }],
    ['rate 1 2', { kind: 'refused', problem: 'arguments', word: 'rate' }],
    ['start now', { kind: 'refused', problem: 'arguments', word: 'start' }],
    ['type 1 X', { kind: 'refused', problem: 'range', word: 'type' }],
    ['type K', { kind: 'refused', problem: 'arguments', word: 'type' }],
    ['START', { kind: 'refused', problem: 'unknown', word: null }],
    ['starting', { kind: 'refused', problem: 'unknown', word: null }],
    ['x'.repeat(200), { kind: 'refused', problem: 'unknown', word: null }],
    ['start#', { kind: 'refused', problem: 'checksum', word: 'start' }],
    ['#', { kind: 'refused', problem: 'checksum', word: null }],
  ])('"%s" typed by hand', (line, command) => {
    expect(readCommand(line)).toEqual(command);
  });

  test('a command with one changed character is refused for its checksum', () => {
    const sealed = thermocoupleTypeCommand(1, 'K');
    expect(readCommand(sealed)).toEqual({ kind: 'type', channel: 1, type: 'K' });
    expect(readCommand(sealed.replace('K', 'J'))).toMatchObject({ problem: 'checksum', word: 'type' });
  });

  test('rates outside 0.1 to 1000 Hz and channels outside 1 to 16 are not sent', () => {
    const refusal = expect.objectContaining({ code: 'command-not-sendable' });
    for (const hz of [0, 0.05, 1001, Number.NaN]) expect(() => rateCommand(hz)).toThrow(refusal);
    for (const channel of [0, 17, 1.5]) expect(() => thermocoupleTypeCommand(channel, 'K')).toThrow(refusal);
  });
});
