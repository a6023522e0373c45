#!/bin/sh
# Run by trunk before the page is built: joins the sheets of style/ into one without comments and indents, because one file asks
# once and packs to half of what many take. The order is that of the layers: tokens first, print last.
set -eu
cd "${TRUNK_SOURCE_DIR:-.}"
mkdir -p target
for sheet in tokens base page verdict question load field button dialog start chart picture sizes fitting table place compare calm print sheet; do
    cat "style/$sheet.css"
done | awk '
    {
        line = $0
        while (1) {
            if (inside) {
                end = index(line, "*/")
                if (!end) next
                line = substr(line, end + 2)
                inside = 0
            }
            start = index(line, "/*")
            if (!start) break
            kept = kept substr(line, 1, start - 1)
            line = substr(line, start + 2)
            inside = 1
        }
        line = kept line
        kept = ""
        sub(/^[ \t]+/, "", line)
        if (line != "") print line
    }' >target/page.css
