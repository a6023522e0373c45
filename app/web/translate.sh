#!/bin/sh
# translate.sh TAG FEATURE: makes the bare page of another language from index.html and the manifest, for trunk to build. The words
# stand in engine/src/words/TAG/index.tsv, English and translation in a row, and each must be found: so none is forgotten when the
# English changes.
set -eu
tag=$1 feature=$2
words=engine/src/words/$tag/index.tsv
mkdir -p "target/$tag"

# translated FILE: its text with all rows of the list put in; rows found are noted.
translated() {
    awk -v list="$words" -v found="target/$tag/found" '
        BEGIN { while ((getline row < list) > 0) { at = index(row, "\t"); from[++n] = substr(row, 1, at - 1); to[n] = substr(row, at + 1) } }
        {
            for (i = 1; i <= n; i++) {
                at = index($0, from[i])
                if (at) { $0 = substr($0, 1, at - 1) to[i] substr($0, at + length(from[i])); print i >>found }
            }
            print
        }' "$1"
}

: >"target/$tag/found"
translated app/web/manifest.webmanifest |
    sed "s|\"lang\": \"en\"|\"lang\": \"$tag\"|; s|\"id\": \"./\"|\"id\": \"$tag/\"|" >"target/$tag/manifest.webmanifest"
translated index.html | sed "
    s|<html lang=\"en\">|<html lang=\"$tag\">|
    s|data-language=\"en\" href=\"./\"|data-language=\"en\" href=\"../\"|
    s|data-language=\"$tag\" href=\"$tag/\"|data-language=\"$tag\" href=\"./\"|
    s|app/web/manifest.webmanifest|target/$tag/manifest.webmanifest|
    s|engine/src/words/en/|engine/src/words/$tag/|
    s|data-trunk rel=\"rust\"|& data-cargo-no-default-features data-cargo-features=\"$feature\"|
    " >".index.$tag.html"

all=$(wc -l <"$words")
found=$(sort -u "target/$tag/found" | wc -l)
if [ "$found" -ne "$all" ]; then
    echo "translate.sh: $words has $all rows, of which $found were found: index.html or the manifest says something else." >&2
    exit 1
fi
