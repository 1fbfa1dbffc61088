/** The one part of jstat we use; the package ships no types. */
declare module 'jstat' {
  const jstat: {
    readonly noncentralt: { cdf(t: number, degreesOfFreedom: number, noncentrality: number): number };
  };
  export default jstat;
}
