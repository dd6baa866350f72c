"""Core against general tools of others: lengths by GeodSolve (GeographicLib, C. F. F. Karney), nearest places, offset lines
and houses in the way of sight by Shapely (GEOS) in a projection by pyproj (PROJ). One line a comparison; exits 1 if any of them disagrees.

Debian: apt-get install geographiclib-tools python3-shapely python3-pyproj
"""
import json
import math
import os
import random
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

from pyproj import Proj
from shapely.geometry import LineString, Point, Polygon

HERE = os.path.dirname(os.path.abspath(__file__))
LENGTH_LIMIT = 1e-4  # metres, on a whole course
SNAP_LIMIT = 0.003  # metres, in distance, offset and measure
WHEEL_LIMIT = 0.3  # metres
SIGHT_LIMIT = 0.001  # metres

SNAP_RADIUS = 60  # core's default
SURELY_SEEN = 55
GONE = 75  # beyond the radius and the 10 m that part two passes


def ours(question):
    """Core's answers."""
    done = subprocess.run(['node', os.path.join(HERE, 'ours.mjs')], input=json.dumps(question), capture_output=True, text=True, check=False)
    if done.returncode != 0:
        sys.exit('the built core gave no answer (pnpm run build comes first):\n' + done.stderr)
    return json.loads(done.stdout)


def track_points(path):
    """Longitude and latitude of a file's first track, read by another parser."""
    root = ElementTree.parse(path).getroot()
    named = [element for element in root.iter() if element.tag.split('}')[-1] == 'trk']
    return [(float(point.get('lon')), float(point.get('lat'))) for point in named[0].iter() if point.tag.split('}')[-1] == 'trkpt']


def geodesic_lengths(points):
    """Length of each step by GeodSolve, to a nanometre."""
    lines = '\n'.join('%.17g %.17g %.17g %.17g' % (a[1], a[0], b[1], b[0]) for a, b in zip(points, points[1:]))
    done = subprocess.run(['GeodSolve', '-i', '-p', '9'], input=lines, capture_output=True, text=True, check=True)
    return [float(line.split()[2]) for line in done.stdout.splitlines()]


def frame(lon, lat):
    """Azimuthal equidistant projection with its centre at a point."""
    return Proj(proj='aeqd', ellps='WGS84', lat_0=lat, lon_0=lon)


def pins_beside(points, count):
    """Places 3 to 50 m beside the course, spread over it, left and right by turns."""
    pins = []
    for k in range(count):
        i = 1 + (len(points) - 3) * k // (count - 1)
        (lon, lat), (lon2, lat2) = points[i], points[i + 1]
        plane = frame(lon, lat)
        x, y = plane(lon2, lat2)
        length = math.hypot(x, y)
        if length == 0:
            continue
        offset = (3 + (k * 7) % 48) * (1 if k % 2 == 0 else -1)
        pins.append(plane(x / 2 - y / length * offset, y / 2 + x / length * offset, inverse=True))
    return pins


def expected_passes(points, sums, pin):
    """(distance, signed offset, measure) of every stretch of the course near a pin; None where a stretch is not plain."""
    xs, ys = frame(*pin)([p[0] for p in points], [p[1] for p in points])
    line = list(zip(xs, ys))
    origin = Point(0, 0)
    runs = []
    for i in range(len(line) - 1):
        if math.hypot(*line[i]) > 5000 or LineString(line[i:i + 2]).distance(origin) > GONE:
            continue
        if runs and runs[-1][1] == i:
            runs[-1][1] = i + 1
        else:
            runs.append([i, i + 1])
    passes = []
    for first, last in runs:
        stretch = LineString(line[first:last + 1])
        distance = stretch.distance(origin)
        chord = math.dist(line[first], line[last])
        # Beside a straight or gently bending stretch only there is one nearest place beyond doubt.
        if first == 0 or last == len(line) - 1 or stretch.length > 1.1 * chord or SURELY_SEEN < distance < GONE - 10:
            return None
        if distance > SNAP_RADIUS:
            continue
        passes.append((distance, *side_and_measure(line, sums, first, last, stretch.interpolate(stretch.project(origin)))))
    return passes


def side_and_measure(line, sums, first, last, foot):
    """Which side of the running direction the pin lies on (0 where a sharp corner has none), and the course distance of its foot."""
    i = min(range(first, last), key=lambda k: LineString(line[k:k + 2]).distance(foot))
    touching = [k for k in range(max(first, i - 2), min(last, i + 3)) if LineString(line[k:k + 2]).distance(foot) < 1e-6]
    sides = {side_of(line[k], line[k + 1]) for k in touching if line[k] != line[k + 1]}
    return sides.pop() if len(sides) == 1 else 0, sums[i] + math.dist(line[i], (foot.x, foot.y))


def side_of(a, b):
    """1 where the origin lies left of the way from a to b, -1 right."""
    return math.copysign(1, (b[0] - a[0]) * -a[1] - (b[1] - a[1]) * -a[0])


def corner(turn_deg):
    turn = math.radians(turn_deg)
    return [(0, 0), (60, 0), (60 + 60 * math.cos(turn), 60 * math.sin(turn))]


def bend(turn_deg, radius):
    """Straight, a bend in steps of 2 m, straight."""
    turn, sign = math.radians(abs(turn_deg)), math.copysign(1, turn_deg)
    pieces = math.ceil(radius * turn / 2)
    arc = [(60 + radius * math.sin(turn * k / pieces), sign * radius * (1 - math.cos(turn * k / pieces))) for k in range(pieces + 1)]
    x, y = arc[-1]
    return [(0, 0), (20, 0), (40, 0), *arc, (x + 60 * math.cos(turn), y + sign * 60 * math.sin(turn))]


def offset_length(points, offset):
    """Length of the line beside a line: round outside, trimmed inside; left is positive."""
    line = LineString(points)
    if hasattr(line, 'offset_curve'):
        return line.offset_curve(offset, quad_segs=64, join_style=1).length
    return line.parallel_offset(abs(offset), 'left' if offset > 0 else 'right', resolution=64, join_style=1).length


class Report:
    """Prints comparisons and counts those that disagree."""

    def __init__(self):
        self.compared = self.disagree = 0

    def say(self, what, count, worst, limit):
        holds = count > 0 and worst <= limit
        self.compared += 1
        self.disagree += not holds
        print('%-9s %-58s %5d compared, largest difference %.2e m (limit %g m)' % ('agrees' if holds else 'DISAGREES', what, count, worst, limit))


def compare_files(report):
    paths = ours({'paths': True})
    points = {name: track_points(path) for name, path in paths.items()}
    pins = {name: pins_beside(line, 200) for name, line in points.items()}
    answers = ours({'files': pins})['files']
    for name, line in points.items():
        steps = geodesic_lengths(line)
        sums = [0.0]
        for step in steps:
            sums.append(sums[-1] + step)
        report.say('length of %s, %.3f km, GeodSolve' % (name, sums[-1] / 1000), len(steps), abs(answers[name]['length'] - math.fsum(steps)), LENGTH_LIMIT)
        compare_snaps(report, name, zip(pins[name], answers[name]['passes']), line, sums)


def compare_snaps(report, name, answers, line, sums):
    count = single = 0
    worst = {'distance': 0.0, 'offset': 0.0, 'measure': 0.0}
    for pin, passes in answers:
        expected = expected_passes(line, sums, pin)
        if not expected:
            continue
        single += len(expected) == 1
        if len(expected) != len(passes):
            worst = dict.fromkeys(worst, math.inf)
            continue
        for (distance, side, measure), got in zip(expected, passes):
            count += 1
            truth = {'distance': distance, 'offset': side * distance, 'measure': measure}
            if side == 0:
                del truth['offset']
            for key, value in truth.items():
                worst[key] = max(worst[key], abs(value - got[key]))
    for key, value in worst.items():
        report.say('%s of snaps to %s (%d pins with one), Shapely' % (key, name, single), count, value, SNAP_LIMIT)


def compare_wheels(report):
    offsets = [sign * metres for metres in range(2, 13) for sign in (1, -1)]
    turns = [sign * turn for turn in range(30, 121, 15) for sign in (1, -1)]
    shapes = {'drawn corners': [corner(turn) for turn in turns]}
    for radius in (15, 25, 60):
        shapes['bends of %d m radius' % radius] = [bend(turn, radius) for turn in turns]
    plane = frame(-17.4, -33.2)
    for name, lines in shapes.items():
        cases = [(line, offset) for line in lines for offset in offsets]
        asked = [{'points': [[*plane(x, y, inverse=True), 0] for x, y in line], 'offset': offset} for line, offset in cases]
        read = ours({'wheels': asked})['wheels']
        worst = max(math.inf if got is None else abs(got - offset_length(line, offset)) for (line, offset), got in zip(cases, read))
        report.say('wheel along %s, Shapely' % name, len(cases), worst, WHEEL_LIMIT)


def random_houses(count, rand):
    """Outlines in metres: turned boxes, some with a courtyard, and angles."""
    houses = []
    for k in range(count):
        east, north, turn = rand.uniform(0, 500), rand.uniform(0, 500), rand.uniform(0, 7)
        a, b = rand.uniform(8, 28), rand.uniform(8, 28)
        rings = [[(0, 0), (a, 0), (a, b), (0, b)]]
        if k % 3 == 0:
            rings = [[(0, 0), (a, 0), (a, b / 3), (a / 3, b / 3), (a / 3, b), (0, b)]]
        elif k % 3 == 1:
            rings.append([(a * x, b * y) for x, y in ((0.3, 0.3), (0.3, 0.7), (0.7, 0.7), (0.7, 0.3))])
        sin, cos = math.sin(turn), math.cos(turn)
        houses.append([[(east + x * cos - y * sin, north + x * sin + y * cos) for x, y in ring] for ring in rings])
    return houses


def first_house(polygons, a, b):
    """Number of the first house of which over 1 cm of the line lies inside, and how far it is; None without one."""
    line, found = LineString([a, b]), []
    for k, house in enumerate(polygons):
        inside = line.intersection(house)
        pieces = [piece for piece in getattr(inside, 'geoms', [inside]) if piece.length > 0.01]
        if pieces:
            found.append((min(piece.distance(Point(a)) for piece in pieces), k))
    return min(found) if found else None


def compare_sights(report):
    rand = random.Random(5)
    houses = random_houses(150, rand)
    polygons = [Polygon(rings[0], rings[1:]) for rings in houses]
    pairs = []
    for _ in range(500):
        x, y, length, turn = rand.uniform(0, 500), rand.uniform(0, 500), rand.uniform(10, 120), rand.uniform(0, 7)
        pairs.append(((x, y), (x + length * math.cos(turn), y + length * math.sin(turn))))
    plane = frame(-17.4, -33.2)
    back = lambda points: [plane(x, y, inverse=True) for x, y in points]
    asked = {'houses': [[back([*ring, ring[0]]) for ring in rings] for rings in houses], 'pairs': [back(pair) for pair in pairs]}
    worst = 0.0
    for pair, got in zip(pairs, ours({'sights': asked})['sights']):
        expected = first_house(polygons, *pair)
        if expected is None and got is None:
            continue
        same = expected is not None and got is not None and expected[1] == got[0]
        worst = max(worst, abs(expected[0] - got[1]) if same else math.inf)
    report.say('sight past 150 houses, Shapely', len(pairs), worst, SIGHT_LIMIT)


def main():
    report = Report()
    compare_files(report)
    compare_wheels(report)
    compare_sights(report)
    print('%d comparisons, %d disagree' % (report.compared, report.disagree))
    sys.exit(1 if report.disagree > 0 else 0)


main()
