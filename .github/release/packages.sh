#!/usr/bin/env bash
# Packs the libraries, the plug-in of the build and the portable tool.
#   packages.sh VERSION FOLDER
set -euo pipefail
version=$1 out=$2
root=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "$out"
out=$(cd "$out" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for project in SpecLint.Science SpecLint SpecLint.RuleAuthoring SpecLint.Analyzers; do
  dotnet pack "$root/src/$project/$project.csproj" -c Release -p:Version="$version" --artifacts-path "$work" -o "$out" --nologo -v q
done
dotnet pack "$root/src/SpecLint.Tool/SpecLint.Tool.csproj" -c Release -p:Version="$version" -p:RuntimeIdentifiers=any --artifacts-path "$work" -o "$out" --nologo -v q
