//! Has the linker tell where it put what, without which the program could not be cut into chunks (see app/web/split_program.sh).

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_ARCH").is_ok_and(|is| is == "wasm32") {
        println!("cargo::rustc-link-arg-bins=--emit-relocs");
        // What lies behind the stack then has addresses that take a byte less to name; nothing here calls itself deeply.
        println!("cargo::rustc-link-arg-bins=-zstack-size=262144");
    }
}
