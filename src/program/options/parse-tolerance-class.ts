import type { ProbeToleranceClass } from '../../core/probe/Probe.ts';
import { OptionError } from './OptionError.ts';

const CLASSES: Readonly<Record<string, ProbeToleranceClass>> = {
  'iec 1': 'iec-class-1',
  'iec 2': 'iec-class-2',
  'iec 3': 'iec-class-3',
  '1': 'iec-class-1',
  '2': 'iec-class-2',
  '3': 'iec-class-3',
  'astm standard': 'astm-standard',
  'astm special': 'astm-special',
  standard: 'astm-standard',
  special: 'astm-special',
};

/** `IEC 2`, `IEC 60584-1 class 2`, `class 2`, `ASTM standard`, `ASTM E230 special`, `special`. */
export function parseToleranceClass(text: string, option: string): ProbeToleranceClass {
  const plain = text
    .toLowerCase()
    .replace(/60584(-[12])?|e ?230(\/e230m)?|class|limits?|of error/gu, ' ')
    .replace(/[\s,-]+/gu, ' ')
    .trim();
  const found = CLASSES[plain];
  if (found !== undefined) return found;
  throw new OptionError(
    `${option}: no tolerance class "${text}"`,
    'Write "IEC 1", "IEC 2", "IEC 3", "ASTM standard" or "ASTM special"',
  );
}
