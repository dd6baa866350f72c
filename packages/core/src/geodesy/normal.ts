/**
 * The standard normal distribution function, for probabilities from a position's error.
 * Model: erf and erfc by rational approximations; W. J. Cody, "Rational Chebyshev approximations for
 * the error function", Math. Comp. 23 (1969) (coefficients from memory, held by the tests to the
 * series and the continued fraction of Abramowitz and Stegun, 7.1.6 and 7.1.14). Accuracy: 1e-15.
 */

/** Probability that a standard normal variate is at most `z`; 0 and 1 at the infinities. */
export function normalCdf(z: number): number {
  // What is left above is under half the last digit of 1.
  if (z > 8.3) return 1;
  const x = Math.abs(z) / Math.SQRT2;
  if (x < 0.46875) return 0.5 + (z < 0 ? -0.5 : 0.5) * erfNear(x);
  const upper = 0.5 * (x <= 4 ? erfcMiddle(x) : erfcFar(x));
  return z < 0 ? upper : 1 - upper;
}

function erfNear(x: number): number {
  const y = x * x;
  const above =
    (((1.85777706184603153e-1 * y + 3.1611237438705656) * y + 1.13864154151050156e2) * y + 3.77485237685302021e2) * y +
    3.20937758913846947e3;
  const below =
    (((y + 2.36012909523441209e1) * y + 2.44024637934444173e2) * y + 1.28261652607737228e3) * y + 2.84423683343917062e3;
  return (x * above) / below;
}

function erfcMiddle(x: number): number {
  const above =
    (((((((2.15311535474403846e-8 * x + 5.64188496988670089e-1) * x + 8.88314979438837594) * x +
      6.61191906371416295e1) *
      x +
      2.98635138197400131e2) *
      x +
      8.8195222124176909e2) *
      x +
      1.71204761263407058e3) *
      x +
      2.05107837782607147e3) *
      x +
    1.23033935479799725e3;
  const below =
    (((((((x + 1.57449261107098347e1) * x + 1.17693950891312499e2) * x + 5.37181101862009858e2) * x +
      1.62138957456669019e3) *
      x +
      3.29079923573345963e3) *
      x +
      4.36261909014324716e3) *
      x +
      3.43936767414372164e3) *
      x +
    1.23033935480374942e3;
  return (Math.exp(-x * x) * above) / below;
}

function erfcFar(x: number): number {
  if (x > 27) return 0;
  const y = 1 / (x * x);
  const above =
    ((((1.63153871373020978e-2 * y + 3.05326634961232344e-1) * y + 3.60344899949804439e-1) * y +
      1.25781726111229246e-1) *
      y +
      1.60837851487422766e-2) *
      y +
    6.58749161529837803e-4;
  const below =
    ((((y + 2.56852019228982242) * y + 1.87295284992346725) * y + 5.27905102951428412e-1) * y +
      6.05183413124413191e-2) *
      y +
    2.33520497626869185e-3;
  return (Math.exp(-x * x) / x) * (1 / Math.sqrt(Math.PI) - (y * above) / below);
}
