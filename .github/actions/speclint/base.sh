#!/usr/bin/env bash
# Names the commit to compare with, and fetches it where the clone is shallow. None for the first push of a branch.
set -euo pipefail
base="${ASKED:-}"
[ -n "$base" ] || base="${PULL_REQUEST_BASE:-}"
[ -n "$base" ] || base="${BEFORE_PUSH:-}"
case "$base" in
  "" | 0000000000000000000000000000000000000000) echo "There is no base to compare with."; exit 0 ;;
  -*) echo "A base does not begin with a hyphen: $base" >&2; exit 2 ;;
esac
if ! git rev-parse --verify --quiet "$base^{commit}" > /dev/null; then
  git fetch --quiet --no-tags --depth=1 origin "$base" || { echo "The base $base cannot be fetched; nothing is compared."; exit 0; }
  # A branch that was fetched by name is known as FETCH_HEAD alone.
  git rev-parse --verify --quiet "$base^{commit}" > /dev/null || base=FETCH_HEAD
fi
echo "commit=$(git rev-parse --verify "$base^{commit}")" >> "$GITHUB_OUTPUT"
