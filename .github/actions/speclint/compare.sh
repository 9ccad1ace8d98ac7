#!/usr/bin/env bash
# Writes what the change does to the drinks, and adds it to the summary of the step.
set -euo pipefail
report="$RUNNER_TEMP/speclint-report"
mkdir -p "$report"
set -- "$BASE" --book "$BOOK" --format markdown --output "$report/changes.md"
if [ -n "${DAY:-}" ]; then set -- "$@" --on "$DAY"; fi
speclint compare "$@"
cat "$report/changes.md" >> "$GITHUB_STEP_SUMMARY"
echo "file=$report/changes.md" >> "$GITHUB_OUTPUT"
