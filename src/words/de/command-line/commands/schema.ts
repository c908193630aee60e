export const schema = {
  theJsonSchemaOf: "das JSON-Schema der Dateien, die dieses Programm liest, für Editoren",
  examples: ["schema > crossgrain.schema.json"],
};
