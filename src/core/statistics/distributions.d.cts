/** Quantile of Student t, as the library has it. */
export function studentT(probability: number, degreesOfFreedom: number): number;
/** Probability that a Student t variable stays at or below `t`. */
export function studentTCdf(t: number, degreesOfFreedom: number): number;
/** Quantile of the standard normal distribution. */
export function normal(probability: number): number;
/** Probability that a noncentral t variable stays at or below `t`. */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number;
