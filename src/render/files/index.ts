export { fileNamePart } from "./file-name.ts";
export { type OnPaper, planFiles } from "./plan-files.ts";
