#!/usr/bin/env bash
# Puts the tool into the job's own folder and onto its path:
# - with VERSION and SOURCE, that version from a package feed;
# - with VERSION, the released binary for this machine, if its checksum is right;
# - without, built from the checkout that this action comes from, unless an earlier job left it in the cache.
set -euo pipefail
tools="$RUNNER_TEMP/speclint-tool"
mkdir -p "$tools"

from_release() {
  local rid archive
  case "$(uname -s)-$(uname -m)" in
    Linux-x86_64) rid=linux-x64 ;;
    Linux-aarch64) rid=linux-arm64 ;;
    Darwin-arm64) rid=osx-arm64 ;;
    Darwin-x86_64) rid=osx-x64 ;;
    MINGW*-x86_64 | MSYS*-x86_64) rid=win-x64 ;;
    *) echo "There is no released binary for $(uname -s) on $(uname -m); leave out the version to build it." >&2; return 1 ;;
  esac
  if [ "$rid" = linux-x64 ] && ldd /bin/sh 2> /dev/null | grep -q musl; then rid=linux-musl-x64; fi
  archive="speclint-$VERSION-$rid.tar.gz"
  if [ "$rid" = win-x64 ]; then archive="speclint-$VERSION-$rid.zip"; fi
  local place="${RELEASES:?}/v$VERSION"
  (
    cd "$RUNNER_TEMP"
    curl --fail --silent --show-error --location --retry 3 --remote-name "$place/$archive" --remote-name "$place/SHA256SUMS"
    # The line of this archive alone, by its whole name.
    awk -v name="$archive" '$2 == name' SHA256SUMS > speclint.sha256
    [ -s speclint.sha256 ] || { echo "SHA256SUMS of $VERSION does not name $archive." >&2; exit 1; }
    if command -v sha256sum > /dev/null; then sha256sum --check --quiet speclint.sha256; else shasum -a 256 --check --quiet speclint.sha256; fi
    case "$archive" in *.zip) unzip -q -o "$archive" ;; *) tar -xzf "$archive" ;; esac
    mv "speclint-$VERSION-$rid"/speclint* "$tools/"
  )
}

if [ -n "${VERSION:-}" ] && [ -n "${SOURCE:-}" ]; then
  dotnet tool install SpecLint.Tool --tool-path "$tools" --version "$VERSION" --source "$SOURCE"
elif [ -n "${VERSION:-}" ]; then
  from_release
elif [ ! -x "$tools/speclint" ] && [ ! -x "$tools/speclint.exe" ]; then
  project="$ACTION_PATH/../../../src/SpecLint.Tool/SpecLint.Tool.csproj"
  packages="$RUNNER_TEMP/speclint-packages"
  dotnet pack "$project" -c Release -p:RuntimeIdentifiers=any -o "$packages" --nologo -v q
  # A version of a package that is being worked on.
  dotnet tool install SpecLint.Tool --tool-path "$tools" --source "$packages" --prerelease
fi
echo "$tools" >> "$GITHUB_PATH"
