export const schema = {
  theJsonSchemaOf: "das JSON-Schema der Dateien, die dieses Programm liest, für Editoren",
};
