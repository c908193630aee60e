/** Why fabric is in no piece: one name for each, in tables, lists and drawings alike. */
export const wasteCauses = {
  shrinkage: "shrinkage",
  selvage: "selvage",
  straightening: "straightening",
  trimming: "trimming",
  "strip-end": "strip ends",
  "uncut-end": "uncut end",
  "run-end": "end of joined strips, once sewn",
  "panel-side": "sides of the panels, once sewn",
  "set-end": "ends of strips longer than their set",
};
