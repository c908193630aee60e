type Books = Awaited<ReturnType<typeof import("../index.ts").loadBook>>;

/** A book before anybody decides how it looks. */
export type Book = ReturnType<Books["classSheet"]>;
