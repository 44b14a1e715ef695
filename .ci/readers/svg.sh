#!/bin/sh
# Checks that an SVG file is well-formed and paints it at true size, as PNG on
# standard output.
#
#   svg.sh FILE DPI
#
# It decides nothing: the tests measure the picture.
set -eu
[ $# -eq 2 ] || { echo "usage: svg.sh FILE DPI" >&2; exit 2; }
xmllint --noout --nonet "$1"
exec rsvg-convert --dpi-x "$2" --dpi-y "$2" --format png --background-color white "$1"
