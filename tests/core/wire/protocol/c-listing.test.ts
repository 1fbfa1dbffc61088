import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createProtocolDecoder, rateCommand } from '../../../../src/core/wire/protocol/index.ts';
import type { WireEvent } from '../../../../src/core/wire/WireEvent.ts';
import { decodeBytes } from './decode-lines.ts';
import { pageBlocks } from './page-blocks.ts';

// The firmware that a stranger would write around the listing: sends bytes to standard output.
const FIRMWARE = `
#include <stdio.h>
#include <string.h>
void out_byte(char byte) { putchar(byte); }
int main(int argc, char **argv) {
  static const int32_t values[3] = {2325, -7, 300000};
  static const char *const none[3] = {0, 0, 0};
  static const char *const broken[3] = {0, "open-circuit", "none"};
  if (argc > 1) {
    printf("%d\\n", (int)command_content(argv[1], (uint8_t)strlen(argv[1])));
    return 0;
  }
  out_byte('\\n');
  send_text("started power-up");
  send_text("identity 1 name=C_board firmware=1 serial=- types=K,J,T sends=celsius rates=10 rate=10 contact=yes");
  send_sample(65535, 4294967295u, 3, values, none);
  send_sample(0, 0, 3, values, broken);
  send_contact(4294967290u, 1);
  send_contact(12, 0);
  for (int32_t i = 0; i < 60000; i++) {
    int32_t one[1] = {i * 5 - 27315};
    if (i == 0) send_text("identity 1 name=C_board firmware=1 serial=- types=K sends=celsius rates=10 rate=10 contact=no");
    send_sample((uint16_t)i, (uint32_t)i * 100000u, 1, one, none);
  }
  return 0;
}
`;

const compiler = ['cc', 'gcc', 'clang'].find((name) => spawnSync(name, ['--version']).status === 0);
const SKIPPED = 'no C compiler (cc, gcc, clang) on this machine: the C listing of the page is not tried';
if (compiler === undefined) console.warn(`skipped: ${SKIPPED}`);

describe.skipIf(compiler === undefined)(
  `C listing of the page${compiler ? '' : ` (skipped: ${SKIPPED})`}`,
  () => {
    const folder = mkdtempSync(join(tmpdir(), 'firmware-'));
    const program = join(folder, 'firmware');
    let events: WireEvent[] = [];

    beforeAll(() => {
      const source = join(folder, 'firmware.c');
      writeFileSync(source, `${pageBlocks('c').join('\n')}\n${FIRMWARE}`);
      const strict = ['-std=c99', '-pedantic-errors', '-w'];
      execFileSync(compiler as string, [...strict, '-o', program, source]);
      events = decodeBytes([execFileSync(program, { maxBuffer: 2 ** 26 })], createProtocolDecoder());
    });
    afterAll(() => rmSync(folder, { recursive: true }));

    test('compiles as C99, and every one of its 60,008 lines is taken', () => {
      expect(events.filter((event) => event.kind === 'trouble')).toEqual([]);
      expect(events).toHaveLength(1 + 2 + 2 + 2 + 1 + 60_000);
    });

    test('23.25, -0.07 and 3000.00 °C at the last number before both counters wrap', () => {
      expect(events[3]).toEqual({
        kind: 'sample',
        sequence: 65535,
        deviceTimeUs: 4294967295,
        channels: [23.25, -0.07, 3000].map((temperatureC) => ({ kind: 'temperature', temperatureC })),
      });
    });

    test('fault words and contact edges', () => {
      expect(events[4]).toMatchObject({
        channels: [{ temperatureC: 23.25 }, { fault: 'open-circuit' }, { kind: 'missing' }],
      });
      expect(events.slice(5, 7)).toEqual([
        { kind: 'contact', closed: true, deviceTimeUs: 4294967290 },
        { kind: 'contact', closed: false, deviceTimeUs: 12 },
      ]);
    });

    test('60,000 samples from -273.15 to 2726.80 °C in steps of 0.05 °C come out as written', () => {
      const wrong = events.slice(8).filter((event, index) => {
        const first = event.kind === 'sample' ? event.channels[0] : undefined;
        const hundredths = first?.kind === 'temperature' ? Math.round(first.temperatureC * 100) : Number.NaN;
        return hundredths !== index * 5 - 27315;
      });
      expect(wrong).toEqual([]);
    });

    test('the command check takes a right seal, a bare command, and refuses a wrong one', () => {
      const contentLength = (command: string) => execFileSync(program, [command]).toString().trim();
      expect(contentLength(rateCommand(10))).toBe('7');
      expect(contentLength('identify')).toBe('8');
      expect(contentLength('start#0000')).toBe('-1');
      expect(contentLength('start#')).toBe('-1');
      expect(contentLength(rateCommand(10).toLowerCase())).toBe('-1');
    });
  },
);
