// Which module goes into which part of the package: the one table, read by the crate, its build script and the build
// tool. A module stands in exactly one part; the whole has them all. The sentences have no module of the registry, and are not
// in the whole of the npm package.
&[
    Part { name: "strength", modules: &["one_rm"], keeps: false },
    Part { name: "loading", modules: &["loading"], keeps: false },
    Part {
        name: "session",
        modules: &["quantity", "record", "gate", "prescription", "rehearsal"],
        keeps: true,
    },
    Part { name: "day", modules: &["dose", "condition"], keeps: false },
    Part { name: "statistics", modules: &["statistics"], keeps: false },
    Part { name: "horizon", modules: &["horizon"], keeps: false },
    Part { name: "english", modules: &[], keeps: false },
]
