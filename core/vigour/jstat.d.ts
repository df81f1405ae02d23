// jstat ships no types; only what core/vigour/distributions.ts and the tests use is declared.
declare module 'jstat' {
  interface Distribution<Parameters extends number[]> {
    cdf(x: number, ...parameters: Parameters): number;
    inv(p: number, ...parameters: Parameters): number;
    pdf(x: number, ...parameters: Parameters): number;
  }
  // CommonJS: only the default is there for every way of loading it.
  const jStat: {
    normal: Distribution<[mean: number, sd: number]>;
    studentt: Distribution<[freedom: number]>;
    chisquare: Distribution<[freedom: number]>;
  };
  export default jStat;
}
