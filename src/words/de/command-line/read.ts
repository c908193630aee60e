export const read = {
  standardInput: "Standardeingabe",
};
