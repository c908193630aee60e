export const schema = {
  theJsonSchemaOf: "the JSON Schema of the files this program reads, for editors",
  /** Command lines to copy, without the program's name. */
  examples: ["schema > crossgrain.schema.json"],
};
