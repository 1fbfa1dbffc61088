/** Value of c_0 + c_1·x + c_2·x² + … by Horner's rule; coefficients lowest power first. */
export function horner(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let power = coefficients.length - 1; power >= 0; power -= 1) {
    value = value * x + (coefficients[power] as number);
  }
  return value;
}
