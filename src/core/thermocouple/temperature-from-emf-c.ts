import type { ThermocoupleType } from '../wire/WireEvent.ts';
import { emfRangeUv } from './emf-range-uv.ts';
import { forwardEmfMv, forwardPieceAt, forwardSlopeMvPerC } from './forward-emf-mv.ts';
import { horner } from './horner.ts';
import { type InversePiece, ITS90_TABLE, type Its90Functions } from './its90-table.ts';
import { ThermocoupleRangeError } from './ThermocoupleRangeError.ts';

/** After a correction this small the next one would be under a microdegree (Newton's error is squared). */
const LAST_CORRECTION_C = 0.02;
const MOST_CORRECTIONS = 6;

/**
 * Temperature in °C of a thermocouple that gives `emfUv` (µV, reference junction 0 °C): the published inverse
 * polynomial as a start, refined by Newton's rule on the reference function itself, so that there and back
 * closes within 0.001 °C. Refuses (ThermocoupleRangeError) an emf outside `emfRangeUv` or not finite;
 * type B has no inverse below 250 °C (291 µV).
 */
export function temperatureFromEmfC(type: ThermocoupleType, emfUv: number): number {
  const range = emfRangeUv(type);
  if (!(emfUv >= range.lowest && emfUv <= range.highest)) {
    throw new ThermocoupleRangeError({ type, quantity: 'emf', value: emfUv, ...range });
  }
  const functions = ITS90_TABLE[type];
  const emfMv = emfUv / 1000;
  let temperatureC = firstGuessC(functions, emfMv);
  for (let step = 0; step < MOST_CORRECTIONS; step += 1) {
    const piece = forwardPieceAt(functions.forward, temperatureC);
    const correctionC = (emfMv - forwardEmfMv(piece, temperatureC)) / forwardSlopeMvPerC(piece, temperatureC);
    temperatureC += correctionC;
    if (Math.abs(correctionC) < LAST_CORRECTION_C) break;
  }
  return temperatureC;
}

/** The published inverse polynomial for this stretch of emf. */
function firstGuessC(functions: Its90Functions, emfMv: number): number {
  const { inverse } = functions;
  let index = 0;
  while (index < inverse.length - 1 && emfMv > (inverse[index] as InversePiece).toMv) index += 1;
  return horner((inverse[index] as InversePiece).coefficients, emfMv);
}
