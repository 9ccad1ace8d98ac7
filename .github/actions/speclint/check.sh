#!/usr/bin/env bash
# Annotates the findings, writes the log for code scanning, and leaves the exit status to the last step.
set -uo pipefail
report="$RUNNER_TEMP/speclint-report"
mkdir -p "$report"
set -- "$BOOK"
if [ -n "${BASELINE:-}" ]; then set -- "$@" --baseline "$BASELINE"; fi
if [ -n "${DAY:-}" ]; then set -- "$@" --on "$DAY"; fi

# Code scanning keeps its own account of what is new: its log holds all findings.
speclint check "$@" --format sarif --for code-scanning --output "$report/speclint.sarif" --fail-at never --quiet || exit 2

if [ "${ONLY_NEW:-}" = "true" ] && [ -n "${BASE:-}" ]; then set -- "$@" --since "$BASE"; fi
speclint check "$@" --format github --fail-at "$FAIL_AT"
status=$?
{
  echo "status=$status"
  echo "sarif=$report/speclint.sarif"
} >> "$GITHUB_OUTPUT"
exit 0
