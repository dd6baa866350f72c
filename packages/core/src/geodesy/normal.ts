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
    (((0.18577770618460315 * y + 3.1611237438705655) * y + 113.86415415105016) * y + 377.485237685302) * y +
    3209.3775891384694;
  const below = (((y + 23.601290952344122) * y + 244.02463793444417) * y + 1282.6165260773723) * y + 2844.236833439171;
  return (x * above) / below;
}

function erfcMiddle(x: number): number {
  const above =
    (((((((2.1531153547440383e-8 * x + 0.5641884969886701) * x + 8.883149794388377) * x + 66.11919063714163) * x +
      298.6351381974001) *
      x +
      881.952221241769) *
      x +
      1712.0476126340707) *
      x +
      2051.0783778260716) *
      x +
    1230.3393547979972;
  const below =
    (((((((x + 15.744926110709835) * x + 117.6939508913125) * x + 537.1811018620099) * x + 1621.3895745666903) * x +
      3290.7992357334597) *
      x +
      4362.619090143247) *
      x +
      3439.3676741437216) *
      x +
    1230.3393548037495;
  return (Math.exp(-x * x) * above) / below;
}

function erfcFar(x: number): number {
  if (x > 27) return 0;
  const y = 1 / (x * x);
  const above =
    ((((0.016315387137302097 * y + 0.30532663496123236) * y + 0.36034489994980445) * y + 0.12578172611122926) * y +
      0.016083785148742275) *
      y +
    0.0006587491615298378;
  const below =
    ((((y + 2.568520192289822) * y + 1.8729528499234673) * y + 0.5279051029514285) * y + 0.06051834131244132) * y +
    0.0023352049762686918;
  return (Math.exp(-x * x) / x) * (1 / Math.sqrt(Math.PI) - (y * above) / below);
}
