#!/usr/bin/env bash
# Packs the libraries, the plug-in of the build, the bench as a page, and the portable tool, which holds the page.
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
page="speclint-bench-$version"
bash "$root/.ci/page" "$work/$page" -p:Version="$version"
(cd "$work" && if command -v zip > /dev/null; then zip -qr "$out/$page.zip" "$page"; else 7z a -bso0 "$out/$page.zip" "$page"; fi)
(cd "$out" && if command -v sha256sum > /dev/null; then sha256sum "$page.zip"; else shasum -a 256 "$page.zip"; fi > "$page.zip.sha256")
dotnet pack "$root/src/SpecLint.Tool/SpecLint.Tool.csproj" -c Release -p:Version="$version" -p:RuntimeIdentifiers=any -p:PageFolder="$work/$page" --artifacts-path "$work" -o "$out" --nologo -v q
