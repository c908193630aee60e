import type { Words } from "../../types.ts";

export const comparing: Words["commandLine"]["comparing"] = {
  planningEachWayOf: (done, of) => `Jede Nähweise wird geplant: ${done} von höchstens ${of}`,
};
