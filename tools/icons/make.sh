#!/bin/sh
# Makes the raster icons from the drawings, with a Chromium at hand: tools/icons/make.sh [chromium]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
icons=$here/../../wwwroot/icons
browser=${1:-chromium}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

draw() { # drawing, width, height, picture
  printf '<style>html,body{margin:0;overflow:hidden}img{display:block;width:%spx;height:%spx}</style><img src="file://%s">' "$2" "$3" "$1" > "$work/page.html"
  "$browser" --headless --no-sandbox --disable-gpu --hide-scrollbars --allow-file-access-from-files \
    --user-data-dir="$work/profile" --window-size="$2,$3" --screenshot="$4" "file://$work/page.html" > /dev/null 2>&1
}

draw "$here/share.svg" 1200 630 "$icons/share.png"
draw "$icons/mark.svg" 180 180 "$icons/mark-180.png"
draw "$icons/mark.svg" 512 512 "$icons/mark-512.png"
