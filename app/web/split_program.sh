#!/bin/sh
# Run by trunk after each build: cuts the program into what the page answers with and chunks that are fetched when somebody wants
# them, and puts these in the place of the whole. A chunk is what only the functions marked `wasm_split(its name)` lead to; what
# several chunks need and the page does not is one, too. All names bear one hash, so that no part meets one of another version.
set -eu

staging=$TRUNK_STAGING_DIR
made=${CARGO_TARGET_DIR:-target}/wasm32-unknown-unknown/$TRUNK_PROFILE
parts=$made/parts

hash() {
    if command -v sha256sum >/dev/null; then sha256sum; else shasum -a 256; fi
}

# What the linker told of places is not standard wasm: the cutting comes first, and takes it away.
cut_apart() {
    rm -rf "$parts"
    RUST_LOG=${RUST_LOG:-error} wasm-split-cli "$made/sunlarder-app.wasm" "$parts" --out-name program
    wasm-bindgen --target web --no-typescript --keep-lld-exports --no-demangle --out-dir "$parts/bound" --out-name program "$parts/program.wasm"
    mv "$parts/bound/program_bg.wasm" "$parts/program.wasm"
}

# Fast first, then small: that is smaller than either alone, and a little smaller still once the flow is laid out anew. The stack lies
# lowest, so that nothing is ever at the lowest addresses.
shrink() {
    node app/web/without_messages.mjs "$parts"/*.wasm 2>"$parts/said" || { cat "$parts/said" >&2; return 1; }
    for part in "$parts"/*.wasm; do
        wasm-opt --flatten --rereloop -O2 -Os --low-memory-unused "$part" -o "$part" 2>"$parts/said" ||
            { cat "$parts/said" >&2; return 1; }
    done
}

# The loader of chunks becomes part of the program's script, so that it costs no request of its own, and so does what makes programs
# whole. They cannot be compiled from a stream then, which would need a host that knows what type wasm is.
join_script() {
    loader=$parts/__wasm_split.js
    sed -e 's/^export //' app/web/whole.js
    sed -e '/^import /d' -e 's/^export //' \
        -e 's/WebAssembly\.instantiateStreaming(src, imports)/WebAssembly.instantiate(whole(await (await src).arrayBuffer()), imports)/' "$loader"
    names=$(sed -n 's/^export const \([a-z_0-9]*\) = .*/\1,/p' "$loader" | tr '\n' ' ')
    sed -e "s|^import \* as \(import[0-9]*\) from \"./__wasm_split.js\"\$|const \1 = { $names};|" \
        -e "s/typeof WebAssembly.instantiateStreaming === 'function'/false/" \
        -e 's/= await module.arrayBuffer()/= whole(await module.arrayBuffer())/' "$parts/bound/program.js"
}

# What takes many sizes through the weather at once; browsers without vectors do without it, and so does a page that asks for no sizes.
lanes=$made/lanes
sizes=${SIZES:-true}

with_lanes() {
    cp "$lanes/lanes_bg.wasm" "$staging/lanes-$name.wasm"
    sed "s/lanes_bg\.wasm/lanes-$name.wasm/g" "$lanes/lanes.js" >"$staging/lanes-$name.js"
    [ "$TRUNK_PROFILE" != release ] || shorten "$staging/lanes-$name.js"
}

name_parts() {
    name=$(cat "$parts"/*.wasm "$parts/script" "$lanes"/lanes* app/web/worker.js | hash | cut -c 1-16)
    [ "$sizes" != true ] || with_lanes
    for part in "$parts"/*.wasm; do
        file=$(basename "$part" .wasm)
        cp "$part" "$staging/${file#split_}-$name.wasm"
    done
    sed -e "s/program_bg\.wasm/program-$name.wasm/g" -e "s|\"\./split_\([a-z_0-9]*\)\.wasm\"|\"./\1-$name.wasm\"|g" \
        -e "s|\"\./\(chunk_[0-9]*\)\.wasm\"|\"./\1-$name.wasm\"|g" "$parts/script" >"$staging/program-$name.js"
    sed -e "s/program\.js/program-$name.js/g" -e "s/lanes\.js/lanes-$name.js/" -e "s/^const SIZES = true/const SIZES = $sizes/" app/web/worker.js >"$staging/worker-$name.js"
    [ "$TRUNK_PROFILE" != release ] || shorten "$staging/worker-$name.js"
    sed -e "s/worker\.js/worker-$name.js/" -e "s/sunlarder-app-[0-9a-f]*_bg\.wasm/program-$name.wasm/g" \
        -e "s/sunlarder-app-[0-9a-f]*\.js/program-$name.js/g" "$staging/index.html" >"$parts/index"
    cp "$parts/index" "$staging/index.html"
    rm "$staging"/sunlarder-app*
}

# Scripts without their comments and long names: 5 kB less to fetch.
shorten() {
    for script in "$@"; do
        terser "$script" --module --compress --mangle --output "$script"
    done
}

cut_apart
sh app/web/build_lanes.sh "$lanes"
join_script >"$parts/script"
[ "$(grep -c 'whole(await' "$parts/script")" = "$(find "$parts" -maxdepth 1 -name '*.wasm' | wc -l)" ] ||
    { echo "The script loads programs in another way than it did." >&2; exit 1; }
if [ "$TRUNK_PROFILE" = release ]; then
    shrink
    node app/web/short_names.mjs "$parts/program.wasm" "$parts/script"
    node app/web/to_streams.mjs "$parts"/*.wasm
    shorten "$parts/script" "$staging"/*.js
fi
name_parts
