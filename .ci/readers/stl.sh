#!/bin/sh
# Says what admesh finds in an STL file, as it stands: nothing is mended.
#
#   stl.sh FILE
#
# It decides nothing: the tests compare the figures with the mesh.
set -eu
[ $# -eq 1 ] || { echo "usage: stl.sh FILE" >&2; exit 2; }
LC_ALL=C exec admesh --exact --normal-directions --normal-values "$1"
