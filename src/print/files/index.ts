export { fileNamePart } from "./file-name.ts";
export { planFiles } from "./plan-files.ts";
