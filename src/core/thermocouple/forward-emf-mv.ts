import { horner } from './horner.ts';
import type { ForwardPiece } from './its90-table.ts';

/** The piece of a reference function that holds at a temperature; the last one where none does. */
export function forwardPieceAt(pieces: readonly ForwardPiece[], temperatureC: number): ForwardPiece {
  let index = 0;
  while (index < pieces.length - 1 && temperatureC > (pieces[index] as ForwardPiece).toC) index += 1;
  return pieces[index] as ForwardPiece;
}

/** emf in mV of one piece at a temperature in °C; not range-checked. */
export function forwardEmfMv(piece: ForwardPiece, temperatureC: number): number {
  const polynomial = horner(piece.coefficients, temperatureC);
  const bump = piece.exponential;
  if (bump === null) return polynomial;
  const distance = temperatureC - bump.a2;
  return polynomial + bump.a0 * Math.exp(bump.a1 * distance * distance);
}

/** Slope dE/dt of one piece in mV/°C (Seebeck coefficient); not range-checked. */
export function forwardSlopeMvPerC(piece: ForwardPiece, temperatureC: number): number {
  const { coefficients, exponential } = piece;
  let slope = 0;
  for (let power = coefficients.length - 1; power >= 1; power -= 1) {
    slope = slope * temperatureC + power * (coefficients[power] as number);
  }
  if (exponential === null) return slope;
  const distance = temperatureC - exponential.a2;
  const bump = exponential.a0 * Math.exp(exponential.a1 * distance * distance);
  return slope + 2 * exponential.a1 * distance * bump;
}
