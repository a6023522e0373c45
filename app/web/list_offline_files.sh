#!/bin/sh
# Run by trunk after each build: writes the service worker with the list of files to keep and a revision over all of them. A changed
# byte in any file makes a changed service worker, which is how a browser notices a new version.
set -eu

worker=app/web/offline.js
staging=$TRUNK_STAGING_DIR

hash() {
    if command -v sha256sum >/dev/null; then sha256sum; else shasum -a 256; fi
}

# Sorted alike on every machine; index.html is kept under the name of its folder, see the worker.
list() {
    (cd "$staging" && find . -type f ! -name offline.js | LC_ALL=C sort | sed 's|^\./||')
}

contents() {
    list | while IFS= read -r file; do
        printf '%s\n' "$file"
        cat "$staging/$file"
    done
    cat "$worker"
}

revision=debug
[ "${TRUNK_PROFILE:-}" != release ] || revision=$(contents | hash | cut -c 1-16)

{
    printf 'const REVISION = "%s";\nconst FILES = [\n' "$revision"
    list | grep -v '^index\.html$' | sed 's/.*/  "&",/'
    printf '];\n'
    cat "$worker"
} >"$staging/offline.js"

[ "${TRUNK_PROFILE:-}" != release ] || terser "$staging/offline.js" --compress --mangle --output "$staging/offline.js"

# The other pages, each a site of its own that keeps its own files.
[ -z "${OTHER_PAGES:-}" ] || cp -R "$OTHER_PAGES"/. "$staging"

# What `./dev serve` wants said when the page is there.
[ -z "${SAY_WHEN_BUILT:-}" ] || printf '%s\n' "$SAY_WHEN_BUILT"
