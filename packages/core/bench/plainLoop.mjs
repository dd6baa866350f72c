/**
 * What one would write without a library: passes of a point by one loop over a line, projected with one cosine for each
 * call. Sides by the sign of the cross product; each stretch within the radius is one pass. Knows no antimeridian, no
 * jumps, no laps that touch, no errors of position; at 50° of latitude its distances are off by some tenths of a percent.
 */
export function plainPasses(lon, lat, [lon0, lat0], radius) {
  const northward = (6371008.8 * Math.PI) / 180;
  const eastward = northward * Math.cos((lat0 * Math.PI) / 180);
  const passes = [];
  let x0 = (lon[0] - lon0) * eastward;
  let y0 = (lat[0] - lat0) * northward;
  let along = 0;
  let best = null;
  let least = Infinity;
  for (let i = 1; i < lon.length; i++) {
    const x1 = (lon[i] - lon0) * eastward;
    const y1 = (lat[i] - lat0) * northward;
    const dx = x1 - x0;
    const dy = y1 - y0;
    const squared = dx * dx + dy * dy;
    const length = Math.sqrt(squared);
    const share = squared === 0 ? 0 : Math.min(Math.max(-(x0 * dx + y0 * dy) / squared, 0), 1);
    const x = x0 + share * dx;
    const y = y0 + share * dy;
    const away = x * x + y * y;
    if (away > radius * radius) {
      if (best !== null) passes.push(best);
      best = null;
      least = Infinity;
    } else if (away < least) {
      least = away;
      best = {
        measure: along + share * length,
        distance: Math.sqrt(away),
        side: dy * x - dx * y > 0 ? 'left' : 'right',
        foot: [lon0 + x / eastward, lat0 + y / northward],
      };
    }
    along += length;
    x0 = x1;
    y0 = y1;
  }
  if (best !== null) passes.push(best);
  return passes;
}
