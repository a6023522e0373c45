#!/bin/sh
# other_page.sh TAG ABOUT FOLDER: makes another page of the site from index.html and the manifest, for trunk to build: in the language TAG,
# about the plan (planner) or the system as it was installed (installed), to lie in FOLDER. What it says otherwise stands in
# engine/src/words/TAG/*.tsv, text and replacement in a row, and each must be found: so none is forgotten when a text changes.
set -eu
tag=$1 about=$2 folder=$3
name=$(printf '%s' "$folder" | tr / -)
made=target/pages/$name
mkdir -p "$made"
case $tag in
en) language=english lists= ;;
es) language=spanish lists=engine/src/words/es/index.tsv ;;
esac
[ "$about" = planner ] || lists="$lists engine/src/words/$tag/installed.tsv"

# replaced LIST: what comes in with all rows of the list put in; rows found are noted.
replaced() {
    awk -v list="$1" -v found="$made/found" '
        BEGIN { while ((getline row < list) > 0) { at = index(row, "\t"); from[++n] = substr(row, 1, at - 1); to[n] = substr(row, at + 1) } }
        {
            for (i = 1; i <= n; i++) {
                at = index($0, from[i])
                if (at) { $0 = substr($0, 1, at - 1) to[i] substr($0, at + length(from[i])); print list, i >>found }
            }
            print
        }'
}

: >"$made/found"
cp index.html "$made/page"
cp app/web/manifest.webmanifest "$made/manifest.webmanifest"
for list in $lists; do
    for file in page manifest.webmanifest; do
        replaced "$list" <"$made/$file" >"$made/next"
        mv "$made/next" "$made/$file"
    done
    all=$(wc -l <"$list")
    found=$(grep "^$list " "$made/found" | sort -u | wc -l)
    if [ "$found" -ne "$all" ]; then
        echo "other_page.sh: $list has $all rows, of which $found were found: index.html or the manifest says something else." >&2
        exit 1
    fi
done

# From the folder to the root, and from the page of a language to what this one is about.
root=$(printf '%s/' "$folder" | sed 's|[^/]*/|../|g')
kind=
files=
if [ "$about" = installed ]; then
    kind=installed/
    # Nobody looks for a place there.
    files='/engine\/data\/towns.txt\|words\/en\/countries.txt\|app\/web\/world.svg/d'
fi
sed "
    s|<html lang=\"en\">|<html lang=\"$tag\">|
    s|data-language=\"en\" href=\"./\"|data-language=\"en\" href=\"$root$kind\"|
    s|data-language=\"es\" href=\"es/\"|data-language=\"es\" href=\"${root}es/$kind\"|
    s|app/web/manifest.webmanifest|$made/manifest.webmanifest|
    $files
    s|engine/src/words/en/|engine/src/words/$tag/|
    s|data-trunk rel=\"rust\"|& data-cargo-no-default-features data-cargo-features=\"$language,$about\"|
    " "$made/page" >".index.$name.html"
sed -i.before "s|\"lang\": \"en\"|\"lang\": \"$tag\"|; s|\"id\": \"./\"|\"id\": \"$folder/\"|" "$made/manifest.webmanifest"
