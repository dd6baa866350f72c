#!/bin/sh
# The oracles, for CI: needs the built core and, from Debian, geographiclib-tools python3-shapely python3-pyproj.
# Debian's own Python, since another one on the path would not see Debian's packages.
exec /usr/bin/python3 "$(dirname "$0")/check.py"
