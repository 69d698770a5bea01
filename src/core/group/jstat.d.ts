/** The part of jstat that is used; the package brings no types. */
declare module 'jstat' {
  interface Distribution {
    inv(share: number, over: number, under: number): number;
    cdf(value: number, over: number, under: number): number;
  }
  const jstat: {
    readonly centralF: Distribution;
    readonly normal: Distribution;
    readonly chisquare: { inv(share: number, freedom: number): number };
  };
  export default jstat;
}
