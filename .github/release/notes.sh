#!/usr/bin/env bash
# Prints what rules-docs/changes.md says of a version: the notes of its release. A version that it does not name is an error.
#   notes.sh VERSION
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
notes=$(awk -v title="## $1" '$0 == title { inside = 1; next } /^## / { inside = 0 } inside' "$root/rules-docs/changes.md")
if [ -z "${notes//[[:space:]]/}" ]; then
  echo "rules-docs/changes.md has no section '## $1'." >&2
  exit 1
fi
printf '%s\n' "$notes"
