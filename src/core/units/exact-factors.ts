/**
 * Conversion factors, all exact by definition.
 * Source: NIST SP 811 (2008), appendix B, and the international yard and pound agreement of 1959.
 */
export const MM_PER_INCH = 25.4;
/** 0.453 592 37 kg × 9.806 65 m/s² ÷ (0.0254 m)², in Pa. */
export const PA_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;
export const PA_PER_BAR = 100_000;
/** 0 °C in kelvin. */
export const KELVIN_AT_ZERO_C = 273.15;
/** 0 °C in °F. */
export const FAHRENHEIT_AT_ZERO_C = 32;
/** °F of difference in one °C (or kelvin) of difference. */
export const FAHRENHEIT_PER_CELSIUS = 1.8;
