#!/usr/bin/env bash
# Installs the tool into the job's own folder: a named version from a feed, else built from the checkout of this action.
set -euo pipefail
tools="$RUNNER_TEMP/speclint-tool"
if [ -n "${VERSION:-}" ]; then
  set -- --version "$VERSION"
  if [ -n "${SOURCE:-}" ]; then set -- "$@" --source "$SOURCE"; fi
  dotnet tool install SpecLint.Tool --tool-path "$tools" "$@"
else
  project="$ACTION_PATH/../../../src/SpecLint.Tool/SpecLint.Tool.csproj"
  packages="$RUNNER_TEMP/speclint-packages"
  dotnet pack "$project" -c Release -p:RuntimeIdentifiers=any -o "$packages" --nologo -v q
  # A version of a package that is being worked on.
  dotnet tool install SpecLint.Tool --tool-path "$tools" --source "$packages" --prerelease
fi
echo "$tools" >> "$GITHUB_PATH"
