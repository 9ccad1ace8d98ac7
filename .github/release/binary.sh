#!/usr/bin/env bash
# Makes the native command for one kind of machine, as an archive with its licence and readme, and its checksum.
#   binary.sh RID VERSION FOLDER
set -euo pipefail
rid=$1 version=$2 out=$3
root=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "$out"
out=$(cd "$out" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
name="speclint-$version-$rid"
dotnet publish "$root/src/SpecLint.Tool/SpecLint.Tool.csproj" -c Release -r "$rid" -p:Version="$version" \
  --artifacts-path "$work/artifacts" -o "$work/publish" --nologo -v q
mkdir "$work/$name"
cp "$root/LICENSE" "$root/README.md" "$work/$name/"
case "$rid" in
  win-*)
    cp "$work/publish/SpecLint.Tool.exe" "$work/$name/speclint.exe"
    archive="$name.zip"
    (cd "$work" && if command -v zip > /dev/null; then zip -qr "$out/$archive" "$name"; else 7z a -bso0 "$out/$archive" "$name"; fi)
    ;;
  *)
    cp "$work/publish/SpecLint.Tool" "$work/$name/speclint"
    chmod 755 "$work/$name/speclint"
    archive="$name.tar.gz"
    tar -C "$work" --owner=0 --group=0 --numeric-owner --sort=name --mtime=@0 -cf - "$name" 2> /dev/null | gzip -n > "$out/$archive" \
      || tar -C "$work" -czf "$out/$archive" "$name"
    ;;
esac
cd "$out"
if command -v sha256sum > /dev/null; then sha256sum "$archive"; else shasum -a 256 "$archive"; fi > "$archive.sha256"
echo "$out/$archive"
