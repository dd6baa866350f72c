#!/bin/sh
# The oracles, for CI: needs the built core and, from Debian, geographiclib-tools libxml2-utils osmium-tool python3-shapely python3-pyproj.
failed=0
# Debian's own Python, since another one on the path would not see Debian's packages.
/usr/bin/python3 "$(dirname "$0")/check.py" || failed=1
node "$(dirname "$0")/gpxSchema.mjs" || failed=1
node "$(dirname "$0")/streets.mjs" || failed=1
exit "$failed"
