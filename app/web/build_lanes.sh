#!/bin/sh
# Builds the lanes of the engine as a program of their own, for browsers that have vectors, into the folder $1. In a target folder of
# its own: with other flags all dependencies of the page would be built anew.
set -eu

target=${CARGO_TARGET_DIR:-target}/lanes
RUSTFLAGS=-Ctarget-feature=+simd128 cargo build --quiet -p sunlarder-lanes-program --profile lanes \
    --target wasm32-unknown-unknown --target-dir "$target"
rm -rf "$1"
wasm-bindgen --target web --no-typescript --out-dir "$1" --out-name lanes \
    "$target/wasm32-unknown-unknown/lanes/sunlarder_lanes_program.wasm"
wasm-opt -O3 --low-memory-unused "$1/lanes_bg.wasm" -o "$1/lanes_bg.wasm"
