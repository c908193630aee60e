export const schema = {
  theJsonSchemaOf: "the JSON Schema of the files this program reads, for editors",
};
