#!/usr/bin/env bash
# Unpacks an archive into an empty folder, checks its sum, and runs the command on its own demo book.
#   try.sh ARCHIVE [ARCHIVE.sha256]
set -euo pipefail
archive=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$(dirname "$archive")"
if command -v sha256sum > /dev/null; then sha256sum --check --quiet "$archive.sha256"; else shasum -a 256 --check --quiet "$archive.sha256"; fi
case "$archive" in
  *.zip) (cd "$work" && if command -v unzip > /dev/null; then unzip -q "$archive"; else 7z x -bso0 "$archive"; fi) ;;
  *) tar -C "$work" -xzf "$archive" ;;
esac
cd "$work"
tool=$(ls -d "$work"/*/speclint*)
"$tool" --version
"$tool" start book > /dev/null
status=0
"$tool" check book --output found.txt || status=$?
# The demo book has deliberate mistakes.
if [ "$status" -ne 1 ] || ! grep -q 'error SL' found.txt; then
  echo "The check of the demo book ended with status $status and no finding." >&2
  exit 1
fi
"$tool" profile low-tide --book book > /dev/null
echo "The demo book was checked: $(grep -c ': error SL' found.txt) errors."
