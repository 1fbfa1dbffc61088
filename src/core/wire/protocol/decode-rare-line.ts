import type { WireEvent } from '../WireEvent.ts';
import { decodeIdentity } from './decode-identity.ts';
import { PROTOCOL_CLOCK_WRAP_US } from './protocol-limits.ts';

const MALFORMED = null;

/**
 * Reads the content of any line but a sample. `unknown-kind`: a kind of a later version, to be passed over;
 * null: a kind we know whose content is not what the protocol allows.
 */
export function decodeRareLine(content: string): WireEvent | null | 'unknown-kind' {
  if (!/^[\x20-\x22\x24-\x7e]+$/.test(content)) return MALFORMED;
  const kind = /^[a-z][a-z-]*(?= |$)/.exec(content)?.[0];
  const fields = content.slice((kind?.length ?? 0) + 1);
  switch (kind) {
    case 'identity': {
      const identity = decodeIdentity(content);
      return identity === null ? MALFORMED : { kind: 'identity', identity };
    }
    case 'contact': {
      const [, time, state] = /^([0-9]{1,10}) (closed|opened)$/.exec(fields) ?? [];
      const deviceTimeUs = Number(time);
      if (state === undefined || deviceTimeUs >= PROTOCOL_CLOCK_WRAP_US) return MALFORMED;
      return { kind: 'contact', closed: state === 'closed', deviceTimeUs };
    }
    case 'started':
      return /^[a-z][a-z-]{0,23}$/.test(fields) ? { kind: 'started' } : MALFORMED;
    case 'overflow': {
      const lostSamples = /^[0-9]{1,5}$/.test(fields) ? Number(fields) : 0;
      return lostSamples >= 1 && lostSamples <= 65_535 ? { kind: 'overflow', lostSamples } : MALFORMED;
    }
    case 'ok':
      return /^[a-z]/.test(fields) ? { kind: 'reply', accepted: true, text: fields } : MALFORMED;
    case 'error':
      return /^[a-z][a-z-]{0,23} ([a-z]+|-)$/.test(fields)
        ? { kind: 'reply', accepted: false, text: fields }
        : MALFORMED;
    case 'note':
      return fields === '' ? MALFORMED : { kind: 'remark', text: fields };
    case 'sample':
    case undefined:
      return MALFORMED;
    default:
      return 'unknown-kind';
  }
}
